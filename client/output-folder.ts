/**
 * What is wrong with the output folder of the settings, with what to write; undefined when it is good.
 * It must lie inside the workspace folder: a workspace that someone else made must not write elsewhere.
 */
export function outputFolderProblem(setting: string): string | undefined {
  if (setting === '') return 'The output folder is empty. Write a folder such as "rigseam-out".';
  if (/^([\\/~]|[a-z]:)/i.test(setting)) {
    return `The output folder "${setting}" is not inside the workspace folder. Write it without a beginning, such as "rigseam-out".`;
  }
  if (setting.includes('\\')) return `Write the output folder "${setting}" with forward slashes.`;
  if (setting.split('/').includes('..')) {
    return `The output folder "${setting}" leaves the workspace folder. Write it without "..".`;
  }
  return undefined;
}
