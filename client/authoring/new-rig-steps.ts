// The questions of a new rig. Which come depends on the answers so far.
import {
  type PartName,
  partNames,
  type RigKind,
  rigKinds,
  usualKinds,
  usualParts,
} from '../../language/authoring/usual.ts';
import { type Choice, pickMany, pickOne, typed } from './inputs.ts';
import { as, type Draft, type Offers, type Policy, type Reader, title } from './new-rig-draft.ts';
import { slideSteps } from './new-rig-slides.ts';
import type { Step } from './steps.ts';

/** `mayWritePolicy`: the folder has no policy.rig. */
export function stepsFor(
  draft: Draft,
  offers: Offers,
  reader: Reader,
  mayWritePolicy: boolean,
): readonly Step<Draft>[] {
  const { policies } = offers;
  const isNew = policies.length === 0 || draft.policy === null;
  return [
    askKind,
    askName(reader),
    ...(policies.length > 0 ? [askPolicy(policies)] : []),
    ...(isNew ? [askUnits] : []),
    askLength(reader),
    askWidth(reader),
    askMembrane(draft.policy?.membranes ?? offers.membranes),
    askParts,
    askSlideCount,
    ...Array.from({ length: draft.slideCount }, (_, i) => slideSteps(i, reader)).flat(),
    askIsUsed,
    ...(draft.isUsed ? [askFound(reader)] : []),
    ...(isNew && mayWritePolicy ? [askWantsPolicy] : []),
  ];
}

const askKind: Step<Draft> = async ({ kind }, at) => {
  const choices = rigKinds.map((value) => ({ label: usualKinds[value].title, value, picked: value === kind }));
  return as(await pickOne<RigKind>({ title, at, placeholder: 'What kind of rig is it?', choices }), (answer) =>
    // Other parts are usual on another kind.
    answer === kind ? { kind } : ({ kind: answer, parts: [...usualKinds[answer].parts] } satisfies Partial<Draft>),
  );
};

const askName =
  (reader: Reader): Step<Draft> =>
  async ({ name }, at) =>
    as(
      await typed({
        title,
        at,
        prompt: 'Its name: the file and the papers are called after it.',
        placeholder: 'Plover',
        value: name,
        problem: reader.name,
      }),
      (answer) => ({ name: answer }),
    );

const askPolicy =
  (policies: readonly Policy[]): Step<Draft> =>
  async ({ policy }, at) => {
    const choices: Choice<Policy | 'none'>[] = [
      ...policies.map((value) => ({
        label: value.name,
        description: value.path,
        value,
        picked: policy?.name === value.name && policy.path === value.path,
      })),
      { label: 'None of these', description: 'the built-in policy holds', value: 'none', picked: policy === null },
    ];
    return as(await pickOne({ title, at, placeholder: 'Under which policy is it kept?', choices }), (answer) =>
      answer === 'none' ? { policy: null } : { policy: answer, units: answer.units },
    );
  };

const askUnits: Step<Draft> = async ({ units }, at) => {
  const choices: Choice<Draft['units']>[] = [
    { label: 'Feet and inches', value: 'us', picked: units === 'us' },
    { label: 'Metres and centimetres', value: 'metric', picked: units === 'metric' },
  ];
  return as(await pickOne({ title, at, placeholder: 'In which units do you measure?', choices }), (answer) => ({
    units: answer,
  }));
};

const example = ({ kind, units }: Draft) => usualKinds[kind].size[units];

const askLength =
  (reader: Reader): Step<Draft> =>
  async (draft, at) =>
    as(
      await typed({
        title,
        at,
        prompt: 'How long is the roof, from the front to the rear? With its unit.',
        placeholder: example(draft)[0],
        value: draft.length,
        problem: (text) => reader.length(text),
      }),
      (answer) => ({ length: answer }),
    );

const askWidth =
  (reader: Reader): Step<Draft> =>
  async (draft, at) =>
    as(
      await typed({
        title,
        at,
        prompt: 'How wide is it, from side to side?',
        placeholder: example(draft)[1],
        value: draft.width,
        problem: (text) => reader.length(text, draft.length),
      }),
      (answer) => ({ width: answer }),
    );

const askMembrane =
  (membranes: Offers['membranes']): Step<Draft> =>
  async ({ membrane }, at) => {
    const choices: Choice<string>[] = [
      ...membranes.map(({ name, about }) => ({
        label: name,
        detail: about,
        value: name,
        picked: name === membrane,
      })),
      { label: 'Not known yet', detail: 'The record says what to look for.', value: '', picked: membrane === null },
    ];
    return as(await pickOne({ title, at, placeholder: 'What is the roof covered with?', choices }), (answer) => ({
      membrane: answer === '' ? null : answer,
    }));
  };

const askParts: Step<Draft> = async ({ kind, parts, units }, at) => {
  const left = [...(parts ?? usualKinds[kind].parts)];
  const choices = partNames.flatMap((value) => {
    const { title: label, more, most, ...part } = usualParts[value];
    return Array.from({ length: most }, (_, i) => {
      const index = left.indexOf(value);
      if (index >= 0) left.splice(index, 1);
      const size = 'size' in part ? part.size[units] : '';
      return {
        label: i === 0 ? label : `${label}, number ${i + 1}`,
        description: [size, i === 0 ? more : ''].filter(Boolean).join(', '),
        value,
        picked: index >= 0,
      };
    });
  });
  return as(
    await pickMany<PartName>({
      title,
      at,
      placeholder: 'What is on the roof? What is usual is ticked.',
      choices,
    }),
    (answer) => ({ parts: answer }),
  );
};

const askSlideCount: Step<Draft> = async ({ slideCount }, at) => {
  const choices = ['None', '1', '2', '3', '4', '5'].map((label, value) => ({
    label,
    value,
    picked: value === slideCount,
  }));
  return as(await pickOne({ title, at, placeholder: 'How many slide-outs does it have?', choices }), (answer) => ({
    slideCount: answer,
  }));
};

const askIsUsed: Step<Draft> = async ({ isUsed }, at) => {
  const choices = [
    { label: 'Used', detail: 'Nobody knows for sure what is on its seams.', value: true, picked: isUsed },
    { label: 'New', detail: 'As it left the factory.', value: false, picked: !isUsed },
  ];
  return as(
    await pickOne({ title, at, placeholder: 'Was it new or used when it came to you?', choices }),
    (answer) => ({
      isUsed: answer,
    }),
  );
};

const askFound =
  (reader: Reader): Step<Draft> =>
  async ({ found }, at) =>
    as(
      await typed({
        title,
        at,
        prompt: 'When did it come to you? A day, a month, or `about` and a year.',
        placeholder: '2021-04-10',
        value: found,
        problem: reader.date,
      }),
      (answer) => ({ found: answer }),
    );

const askWantsPolicy: Step<Draft> = async ({ wantsPolicy }, at) => {
  const choices = [
    {
      label: 'Write policy.rig too',
      detail: 'A place for your own rates, season and intervals, to be filled in.',
      value: true,
      picked: wantsPolicy,
    },
    { label: 'Only the rig', detail: 'The built-in policy holds.', value: false, picked: !wantsPolicy },
  ];
  return as(
    await pickOne({ title, at, placeholder: 'This folder has no policy.rig yet. Write one?', choices }),
    (answer) => ({ wantsPolicy: answer }),
  );
};
