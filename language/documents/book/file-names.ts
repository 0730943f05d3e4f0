// Names of the files of the book.

/** `NAME.incident-1.html`: leaks are numbered in order of time. */
export const incidentFile = (name: string, index: number): string => `${name}.incident-${index + 1}.html`;
