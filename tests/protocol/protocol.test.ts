import { describe, expect, it } from 'vitest';
import { documentsReplySchema, fileNameSchema, settingsSchema, statusSchema } from '../../language/protocol/index.ts';

describe('the protocol', () => {
  it.each(['Heron.estimate.md', 'Möwe-2.schedule.ics', '屋根.estimate.json'])('takes the file name %s', (name) => {
    expect(fileNameSchema.safeParse(name).success).toBe(true);
  });

  it.each(['', '.hidden', '..', '../up.md', 'a/b.md', 'a\\b.md', 'C:x', 'a\nb', 'a\u0000', 'x'.repeat(201)])(
    'refuses the file name %j',
    (name) => {
      expect(fileNameSchema.safeParse(name).success).toBe(false);
    },
  );

  it('refuses a reply with a file that would leave the folder', () => {
    const reply = (name: string) => ({ kind: 'documents', files: [{ name, text: '' }], problems: [] });
    expect(documentsReplySchema.safeParse(reply('a.md')).success).toBe(true);
    expect(documentsReplySchema.safeParse(reply('../a.md')).success).toBe(false);
  });

  it('carries bytes as well as texts, and refuses what is no Base64', () => {
    const reply = (file: object) => ({ kind: 'documents', files: [{ name: 'a.xlsx', ...file }], problems: [] });
    expect(documentsReplySchema.parse(reply({ base64: 'UEsDBA==' }))).toEqual(reply({ base64: 'UEsDBA==' }));
    expect(documentsReplySchema.safeParse(reply({ base64: 'not Base64!' })).success).toBe(false);
    expect(documentsReplySchema.safeParse(reply({})).success).toBe(false);
  });

  it('fills in the settings that another editor leaves out', () => {
    expect(settingsSchema.parse({})).toEqual({
      asOf: '',
      inlayHints: true,
      hints: { lengths: true, work: true, dueDates: true, totals: true },
      codeLens: true,
      lenses: { next: true, purchase: true, commands: true },
      problems: 'all',
    });
    expect(settingsSchema.parse({ hints: { work: false } }).hints).toMatchObject({ lengths: true, work: false });
    expect(settingsSchema.safeParse({ asOf: 'tomorrow' }).success).toBe(false);
  });

  it('takes only days of the calendar in a status', () => {
    const status = { rigs: 1, overdue: 0, asOf: '2028-02-29', today: '2026-10-01', busy: false };
    expect(statusSchema.safeParse(status).success).toBe(true);
    expect(statusSchema.safeParse({ ...status, asOf: '2026-02-29' }).success).toBe(false);
  });
});
