// The questions about one slide-out of a new rig.
import type { FirstSlide } from '../../language/authoring/first-record.ts';
import { type Choice, pickOne, typed } from './inputs.ts';
import { as, type Draft, type Reader, title } from './new-rig-draft.ts';
import type { At, Step } from './steps.ts';

export function slideSteps(index: number, reader: Reader): readonly Step<Draft>[] {
  const titled = ({ slideCount }: Draft) => (slideCount === 1 ? title : `${title}: slide-out ${index + 1}`);
  const changed = ({ slides }: Draft, more: Partial<FirstSlide>): Partial<Draft> => {
    const next = [...slides];
    next[index] = { length: '', depth: '', side: 'roadside', ...slides[index], ...more };
    return { slides: next };
  };
  const measure =
    (field: 'length' | 'depth', prompt: string, placeholder: (draft: Draft) => string, atMost: 'length' | 'width') =>
    async (draft: Draft, at: At) =>
      as(
        await typed({
          title: titled(draft),
          at,
          prompt,
          placeholder: placeholder(draft),
          value: draft.slides[index]?.[field],
          problem: (text) => reader.length(text, draft[atMost]),
        }),
        (answer) => changed(draft, { [field]: answer }),
      );
  return [
    measure(
      'length',
      'How long is its roof, along the side?',
      ({ units }) => (units === 'us' ? '11 ft' : '3.4 m'),
      'length',
    ),
    measure('depth', 'How far does it come out?', ({ units }) => (units === 'us' ? '3 ft' : '90 cm'), 'width'),
    async (draft, at) => {
      const side = draft.slides[index]?.side;
      const choices: Choice<FirstSlide['side']>[] = [
        {
          label: 'Road side',
          description: 'left of travel, unless a policy says `curb left`',
          value: 'roadside',
          picked: side === 'roadside',
        },
        { label: 'Curb side', description: 'where the door is', value: 'curbside', picked: side === 'curbside' },
      ];
      return as(await pickOne({ title: titled(draft), at, placeholder: 'On which side?', choices }), (answer) =>
        changed(draft, { side: answer }),
      );
    },
  ];
}
