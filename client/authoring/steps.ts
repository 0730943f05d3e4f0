// Questions one after the other, with a way back: what was answered stays, and is offered again on the way forward.

/** Where a question stands among the others. */
export interface At {
  readonly step: number;
  readonly total: number;
}

/** One question: what its answer adds to the answers, or undefined to go back to the question before. */
export type Step<A> = (answers: A, at: At) => Promise<Partial<A> | undefined>;

/** Asks until all is answered; undefined when the person goes back from the first question. Which questions there are may follow from the answers. */
export async function throughSteps<A>(stepsFor: (answers: A) => readonly Step<A>[], start: A): Promise<A | undefined> {
  let answers = start;
  for (let i = 0; ; ) {
    const steps = stepsFor(answers);
    const step = steps[i];
    if (!step) return answers;
    const more = await step(answers, { step: i + 1, total: steps.length });
    if (more !== undefined) {
      answers = { ...answers, ...more };
      i++;
    } else if (--i < 0) return undefined;
  }
}
