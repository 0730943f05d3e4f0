// What may be asked for in a single answer; apart from the reader, so that the client does not carry the whole language.

/** `rough-day`: a day, a month, `about 2019`; `day`: a day of the calendar, with a time if there is one. */
export const answerKinds = ['length', 'day', 'rough-day', 'stretch', 'percent'] as const;
export type AnswerKind = (typeof answerKinds)[number];
