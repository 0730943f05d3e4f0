import { type Disposable, StatusBarAlignment, ThemeColor, window } from 'vscode';
import type { Status } from '../language/protocol/index.ts';
import { statusText } from './status-text.ts';

/** The status bar item; `show(undefined)` hides it. */
export interface StatusBar extends Disposable {
  show(status: Status | undefined): void;
}

/** Makes the status bar item: how many rigs are overdue, and the as-of date when it is not today. */
export function statusBar(): StatusBar {
  const item = window.createStatusBarItem('rigseam.status', StatusBarAlignment.Left);
  item.name = 'Rigseam';
  item.command = 'workbench.actions.view.problems';
  return {
    show(status) {
      const say = status && statusText(status);
      if (say === undefined) {
        item.hide();
        return;
      }
      item.text = say.text;
      item.tooltip = say.tooltip;
      item.accessibilityInformation = { label: `Rigseam: ${say.tooltip}`, role: 'button' };
      item.backgroundColor = say.warning ? new ThemeColor('statusBarItem.warningBackground') : undefined;
      item.show();
    },
    dispose: () => item.dispose(),
  };
}
