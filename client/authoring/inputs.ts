// The quick inputs of a talk. None closes because the focus goes elsewhere; the back button and Esc lead back.
import { type InputBox, QuickInputButtons, type QuickPick, type QuickPickItem, window } from 'vscode';
import type { At } from './steps.ts';

interface Shown {
  readonly title: string;
  readonly at: At;
}

/** An answer, or how the input was left without one. */
export type Reply<T> = { readonly answer: T } | { readonly left: 'back' | 'escape' };

/** Shows an input until it is answered or left. */
function shown<T, Q extends InputBox | QuickPick<QuickPickItem>>(
  input: Q,
  { title, at }: Shown,
  onAccept: (answer: (value: T) => void) => void,
): Promise<Reply<T>> {
  return new Promise((done) => {
    const end = (reply: Reply<T>) => {
      done(reply);
      input.dispose();
    };
    input.title = title;
    input.step = at.step;
    input.totalSteps = at.total;
    input.ignoreFocusOut = true;
    input.buttons = at.step > 1 ? [QuickInputButtons.Back] : [];
    input.onDidTriggerButton((button) => button === QuickInputButtons.Back && end({ left: 'back' }));
    input.onDidHide(() => end({ left: 'escape' }));
    input.onDidAccept(() => onAccept((answer) => end({ answer })));
    input.show();
  });
}

/** A choice with the value that it stands for; a separator has none. */
export interface Choice<T> extends QuickPickItem {
  readonly value?: T;
}

export interface PickOptions<T> extends Shown {
  readonly placeholder: string;
  readonly choices: readonly Choice<T>[];
}

/** The first picked choice, else the first of all, is the one that the return key takes. */
export function pickOne<T>({ choices, placeholder, ...rest }: PickOptions<T>): Promise<Reply<T>> {
  const input = window.createQuickPick<Choice<T>>();
  // A mark of what was picked is drawn where many may be: here it only says where to begin.
  input.items = choices.map(({ picked: _, ...choice }) => choice as Choice<T>);
  input.placeholder = placeholder;
  input.matchOnDescription = true;
  input.matchOnDetail = true;
  const first = input.items[choices.findIndex(({ picked }) => picked)];
  if (first) input.activeItems = [first];
  return shown(input, rest, (answer) => {
    const value = input.selectedItems[0]?.value;
    if (value !== undefined) answer(value);
  });
}

export function pickMany<T>({ choices, placeholder, ...rest }: PickOptions<T>): Promise<Reply<readonly T[]>> {
  const input = window.createQuickPick<Choice<T>>();
  input.canSelectMany = true;
  input.items = choices;
  input.placeholder = placeholder;
  input.matchOnDescription = true;
  input.selectedItems = choices.filter(({ picked }) => picked);
  return shown(input, rest, (answer) =>
    answer(input.selectedItems.flatMap(({ value }) => (value === undefined ? [] : [value]))),
  );
}

export interface TypedOptions extends Shown {
  readonly prompt: string;
  readonly placeholder?: string;
  readonly value?: string | undefined;
  /** What is wrong with a text, as a sentence. Asked while it is typed, and once more before it is taken. */
  readonly problem?: (text: string) => Promise<string | undefined>;
}

export function typed({ prompt, placeholder, value = '', problem, ...rest }: TypedOptions): Promise<Reply<string>> {
  const input = window.createInputBox();
  input.prompt = prompt;
  input.placeholder = placeholder;
  input.value = value;
  let asked = 0;
  const isGood = async (text: string): Promise<boolean> => {
    const mine = ++asked;
    const said = await problem?.(text);
    // What was said of an earlier text is of no interest.
    if (mine !== asked) return false;
    input.validationMessage = said;
    return said === undefined;
  };
  input.onDidChangeValue((text) => void isGood(text));
  return shown(input, rest, async (answer) => {
    const text = input.value;
    if (await isGood(text)) answer(text.trim());
  });
}
