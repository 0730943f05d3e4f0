/** A mistake in what was asked for, said for people: on the command line exit code 2, in the editor a message. */
export class Misuse extends Error {}
