// What is wrong at a place of one text: the form in which every stage of reading reports.

/** Two offsets into the text of a file, the second behind the last character. */
export type Span = readonly [start: number, end: number];

/** A change of text that mends a problem. */
export interface Fix {
  readonly label: string;
  readonly at: Span;
  readonly text: string;
  /** Right only if a person says so: it is offered, never preferred, and no part of mending all. */
  readonly unsure?: true;
}

/** A problem found while reading: the rule's name, a sentence that says what to write, the place, the fixes. */
export interface Problem {
  readonly rule: string;
  readonly message: string;
  readonly at: Span;
  readonly fixes?: readonly Fix[];
}
