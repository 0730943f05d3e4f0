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
    hints: {
      lengths: settings.get<boolean>('inlayHints.lengths', true),
      work: settings.get<boolean>('inlayHints.work', true),
      dueDates: settings.get<boolean>('inlayHints.dueDates', true),
      totals: settings.get<boolean>('inlayHints.totals', true),
    },
    codeLens: settings.get<boolean>('codeLens.enabled', true),
    lenses: {
      next: settings.get<boolean>('codeLens.next', true),
      purchase: settings.get<boolean>('codeLens.purchase', true),
      commands: settings.get<boolean>('codeLens.commands', true),
    },
    problems: settings.get<string>('problems', 'all') === 'openFiles' ? 'openFiles' : 'all',
  };
}

/** The output folder as it is written in the settings that hold for this file. */
export function outputFolderSetting(scope: ConfigurationScope): string {
  return workspace.getConfiguration(section, scope).get<string>('outputFolder', 'rigseam-out').trim();
}
