/** `NAME.rig`, or with the first number that no file has yet: `NAME-2.rig`. */
export async function freeName(name: string, isTaken: (file: string) => Promise<boolean>): Promise<string> {
  for (let i = 1; ; i++) {
    const file = i === 1 ? `${name}.rig` : `${name}-${i}.rig`;
    if (!(await isTaken(file))) return file;
  }
}
