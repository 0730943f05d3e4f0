import { type ConfigurationScope, workspace } from 'vscode';
import type { Settings } from '../language/protocol/index.ts';
import { isDateOrEmpty } from './as-of-date.ts';

// The one place that reads the `rigseam.*` settings. `rigseam.trace.server` is read by the language client itself.

export const section = 'rigseam';

/** The settings that the server needs. A date that is none counts as today; the settings editor underlines it. */
export function serverSettings(): Settings {
  const settings = workspace.getConfiguration(section);
  const asOf = settings.get<string>('asOf', '').trim();
  return {
    asOf: isDateOrEmpty(asOf) ? asOf : '',
    inlayHints: settings.get<boolean>('inlayHints.enabled', true),
    codeLens: settings.get<boolean>('codeLens.enabled', true),
  };
}

/** The output folder as it is written in the settings that hold for this file. */
export function outputFolderSetting(scope: ConfigurationScope): string {
  return workspace.getConfiguration(section, scope).get<string>('outputFolder', 'rigseam-out').trim();
}
