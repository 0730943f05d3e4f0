// Calendars beside the text: one panel for each fleet or rig, kept in step with the records.
import { type Disposable, type ExtensionContext, Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import { type Calendar, type CalendarAddress, calendarAsk } from '../../language/protocol/index.ts';
import { goTo } from '../go-to.ts';
import type { LanguageServer } from '../language-server.ts';
import { pageText } from '../page-text.ts';
import { fromCalendarSchema, keptCalendarSchema, type ShowCalendar } from './messages.ts';
import { calendarStyle } from './style.ts';

/** The kind of the panels; the manifest wakes the extension for those that were open before a restart. */
const panelKind = 'rigseam.calendar';

/** How long typing rests before a calendar is worked out anew, in milliseconds: a fleet's schedule takes its time. */
const rest = 600;

export interface Calendars extends Disposable {
  /** Shows a calendar beside the text, or brings it forward. */
  show(of: CalendarAddress): void;
}

export function calendars(context: ExtensionContext, server: LanguageServer): Calendars {
  const open = new Map<string, { readonly panel: WebviewPanel; refresh(): void }>();
  const scripts = Uri.joinPath(context.extensionUri, 'dist');
  const options = { enableScripts: true, localResourceRoots: [scripts] };
  let timer: ReturnType<typeof setTimeout> | undefined;

  const begin = (panel: WebviewPanel, of: CalendarAddress) => {
    const key = keyOf(of);
    let calendar: Calendar | undefined;
    let note = 'The calendar is being worked out.';
    const tell = () => {
      const message: ShowCalendar = { kind: 'show', of, note, ...(calendar && { calendar }) };
      void panel.webview.postMessage(message);
    };
    const refresh = async () => {
      try {
        const next = await server.ask(calendarAsk, of);
        note = next ? '' : `The file has no rig or fleet \`${of.name}\` now.`;
        calendar = next ?? calendar;
      } catch {
        // Until the next server runs: it says itself why it does not.
        note = 'The language server is not running; what stands here is from before.';
      }
      tell();
    };
    panel.webview.options = options;
    panel.iconPath = Uri.joinPath(context.extensionUri, 'client', 'icon.png');
    panel.webview.onDidReceiveMessage((message: unknown) => {
      const done = fromCalendarSchema.safeParse(message);
      if (!done.success) return;
      if (done.data.kind === 'ready') tell();
      else void goTo(calendar?.entries[done.data.entry]?.place, ViewColumn.One);
    });
    panel.webview.html = pageText({
      title: panel.title,
      style: calendarStyle,
      script: panel.webview.asWebviewUri(Uri.joinPath(scripts, 'calendar.js')).toString(),
    });
    panel.onDidDispose(() => void open.delete(key));
    open.set(key, { panel, refresh: () => void refresh() });
    void refresh();
  };

  const listeners = [
    server.onStale(() => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        for (const { refresh } of open.values()) refresh();
      }, rest);
    }),
    window.registerWebviewPanelSerializer(panelKind, {
      async deserializeWebviewPanel(panel, state) {
        const kept = keptCalendarSchema.safeParse(state);
        if (kept.success && !open.has(keyOf(kept.data))) begin(panel, kept.data);
        else panel.dispose();
      },
    }),
  ];
  return {
    show(of) {
      const known = open.get(keyOf(of));
      if (known) return known.panel.reveal(undefined, false);
      begin(window.createWebviewPanel(panelKind, `Calendar of ${of.name}`, ViewColumn.Beside, options), of);
    },
    dispose() {
      clearTimeout(timer);
      for (const each of listeners) each.dispose();
    },
  };
}

const keyOf = ({ uri, name }: CalendarAddress): string => `${Uri.parse(uri).toString()}\n${name}`;
