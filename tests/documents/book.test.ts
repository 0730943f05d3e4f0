import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addressOf } from '../../language/documents/book/links.ts';
import { folder, pageOf, pagesOf } from './books.ts';
import { attribute, html, textOf } from './sheets.ts';
import { strict } from './strict.ts';

const owner = pagesOf(folder('single'));
const yard = pagesOf(folder('fleet'));
const book = pageOf('Wren.history.html', owner);
const { all } = html(book);
const tagged = (from: ReturnType<typeof html>['all'], tag: string) => from.filter(({ tagName }) => tagName === tag);

describe('the service book', () => {
  it('is a strict page for each rig and none for a fleet', () => {
    const pages = [...owner, ...yard].filter(([name]) => !name.endsWith('.morning.html'));
    expect(pages.map(([name]) => name).sort()).toEqual(
      ['Brook', 'Cairn', 'Dell', 'Fell', 'Glen', 'Heath', 'Lough', 'Moor', 'Wren']
        .map((name) => `${name}.history.html`)
        .concat('Heath.incident-1.html', 'Wren.incident-1.html')
        .sort(),
    );
    for (const [name, text] of pages) strict(name, text);
  });

  it('has a leaf for each seam and item with its anchor in the contents', () => {
    const leaves = tagged(all, 'h3').map(textOf);
    for (const name of ['curbside', 'sofa', 'fridge-vent', 'panel-feet', 'awning', 'membrane', 'rear-corner'])
      expect(leaves).toContain(name);
    expect(tagged(all, 'section').filter((one) => attribute(one, 'class') === 'leaf')).toHaveLength(18);
  });

  it('tells the work at a seam with its materials, lot and temperatures, and what is not written down', () => {
    const leaf = tagged(all, 'section').find((one) => textOf(one).startsWith('fridge-vent'))!;
    const text = textOf(leaf);
    for (const said of [
      '2025-08-30',
      'LevelLap (1 cartridge)',
      'lot L-2411',
      'air 72 F',
      'surface 80 F',
      'lifting, wet',
    ])
      expect(text).toContain(said);
    expect(text).toContain('not recorded: who, photo');
    expect(text).toContain('13 %down 9 points');
  });

  it('shows a photo that the record names, from beside the record', () => {
    const sources = tagged(all, 'img').map((one) => attribute(one, 'src'));
    expect(sources).toContain('wren/fridge-vent-2025.png');
  });

  it('says what is unknown, what is open, and that nobody vouches', () => {
    const text = textOf(tagged(all, 'main')[0]!);
    expect(text).toContain('before the first recordfrom 2014-09 to 2024-05-11');
    expect(text).toContain('said not to have been seenpanel-feet');
    expect(text).toContain('Nobody but who wrote them vouches');
    expect(text).not.toMatch(/\b(?:is|are) (?:now )?(?:dry|watertight|safe)\b|meets (?:the|any) warranty/i);
  });

  it('says of a rig without records that nothing is recorded', () => {
    const bare = pageOf('Bare.history.html', pagesOf({ 'a.rig': 'rig Bare {\n  edge curbside\n}\n' }));
    const text = textOf(tagged(strict('Bare', bare), 'main')[0]!);
    expect(text).toContain('recordsnone');
    expect(text).toContain('never looked atcurbside');
    expect(text).toContain('VINnot recorded');
  });

  it('sums what was paid by year and never over two currencies', () => {
    const text = `rig R {\n edge curbside\n history_end\n}\n`.replace(
      ' history_end\n',
      '  sealed 2024-05-01 curbside paid 40.10 USD paper "a.pdf"\n  sealed 2024-06-01 curbside paid 0.20 USD\n  sealed 2025-05-01 curbside paid 7 EUR\n',
    );
    const page = textOf(tagged(html(pageOf('R.history.html', pagesOf({ 'a.rig': text }))).all, 'main')[0]!);
    expect(page).toMatch(/202440\.30 USD2 payments/);
    expect(page).toMatch(/all years7(?:\.00)? EUR; 40\.30 USD3 payments/);
  });

  it('takes hostile text in every free field as text that can be read', () => {
    const bad = `</script><img src=x onerror=alert(1)>'&\u202e\u0007=1+1 ${'x'.repeat(10_000)} \u{1f600}`;
    const quoted = JSON.stringify(bad).replaceAll('\\u0007', '');
    const text = `## ${bad.replaceAll('\u0007', '')}\nrig R {\n edge curbside\n leaked 2026-05-01 inside ${quoted} suspect curbside note ${quoted} by ${quoted} photo "javascript:alert(1)", "../../x.jpg" paper "/etc/passwd"\n sealed 2026-05-02 curbside with Glue lot ${quoted} paid 3 USD\n}\n`;
    const pages = pagesOf({ 'a.rig': text });
    expect([...pages.keys()]).toEqual(['R.history.html', 'R.incident-1.html']);
    for (const [name, page] of pages) {
      const read = textOf(tagged(strict(name, page), 'main')[0]!);
      expect(read).toContain('</script><img src=x onerror=alert(1)>');
      expect(read).toContain('x'.repeat(10_000));
      expect(read).toContain('javascript:alert(1)');
      expect(read).not.toContain('\u202e');
      expect(tagged(html(page).all, 'img')).toEqual([]);
    }
  });

  it('leaves out what was recorded after the as-of date', () => {
    const early = pagesOf(folder('single'), { asOf: '2025-08-25', today: '2026-11-25' });
    const text = pageOf('Wren.history.html', early);
    expect(text).not.toContain('taken off and bedded anew');
    expect(pageOf('Wren.incident-1.html', early)).toContain('Open: no repair is recorded.');
  });

  it('is the same each time', () => {
    expect([...pagesOf(folder('single'))]).toEqual([...owner]);
  });
});

describe('addresses of photos and papers', () => {
  it('stay inside the folder of the page or are none', () => {
    expect(addressOf('a b#1.jpg', 'x/wren/2025.rig', 'x')).toBe('wren/a%20b%231.jpg');
    expect(addressOf('../a.jpg', 'x/wren/2025.rig', 'x')).toBe('a.jpg');
    for (const bad of [
      '../../a.jpg',
      '/etc/a.jpg',
      'javascript:alert(1)',
      'JavaScript:x',
      '//host/a.jpg',
      'C:\\a.jpg',
      'http://h/a.jpg',
      'file:///a',
    ])
      expect(addressOf(bad, 'x/wren/2025.rig', 'x'), bad).toBeUndefined();
  });

  it('are never more than relative paths, whatever is written', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (written) => {
        const address = addressOf(written, 'x/y.rig', 'x');
        if (address === undefined) return;
        const url = new URL(address, 'http://host/top/page.html');
        expect(url.origin).toBe('http://host');
        expect(url.pathname.startsWith('/top/')).toBe(true);
      }),
    );
  });
});
