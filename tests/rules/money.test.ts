import { describe, expect, it } from 'vitest';
import { rigWith, said, under } from './asked.ts';

const policy = 'policy Yard { currency USD\n labour 48 USD per h }\n';
const tape = (price: string) => `tape Strip4 { width 4 in\n roll 50 ft${price}\n roll 25 ft }\n`;
const rig = (...lines: readonly string[]) =>
  rigWith('cap front 5 in wide', ...lines).replace('rig Heron', 'rig Heron under Yard');

describe('a price', () => {
  it('is missed where a plan needs it, once for each material', () => {
    const text = policy + tape('') + rig('tape front with Strip4', 'tape front with Strip4 after 2040-05-01');
    const [finding, ...more] = said('no-price', text);
    expect(more).toEqual([]);
    expect(finding?.message).toContain('roll 50 ft at 61.00 USD');
    expect(under(text, finding!)).toBe('Strip4');
    expect(finding?.related).toHaveLength(1);
  });

  it('of one of several sizes will do, and nobody needs one without a plan', () => {
    expect(said('no-price', policy + tape(' at 58 USD') + rig('tape front with Strip4'))).toEqual([]);
    expect(said('no-price', policy + tape('') + rig('taped 2026-05-01 front with Strip4'))).toEqual([]);
  });

  it('of what is built in has to be declared', () => {
    const [finding] = said('no-price', policy + rig('seal front with GenericSolventLap'));
    expect(finding?.message).toContain('sealant Mine like GenericSolventLap');
    expect(finding?.related).toBeUndefined();
  });
});

describe('two currencies', () => {
  it('of a plan and its policy are not added', () => {
    const text = policy + tape(' at 58 EUR') + rig('tape front with Strip4');
    const [finding, ...more] = said('currencies-mixed', text);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: 'error' });
    expect(finding?.message).toContain('58 EUR');
    expect(finding?.related).toHaveLength(2);
    expect(said('currencies-mixed', text.replace('58 EUR', '58 USD'))).toEqual([]);
  });

  it('are told of day rates and quotes', () => {
    const text = policy + rig('day-rate 140 EUR', 'quote "shop A" 1450 EUR for recoat');
    expect(said('currencies-mixed', text)).toHaveLength(2);
    expect(said('currencies-mixed', text.replaceAll('EUR', 'USD'))).toEqual([]);
  });

  it('of one material are told where it is declared, whoever uses it', () => {
    const text = 'tape Strip4 {\n roll 50 ft at 58 USD\n roll 25 ft at 31 EUR\n}\n';
    const [finding] = said('currencies-mixed', text);
    expect(under(text, finding!)).toBe('roll 25 ft at 31 EUR');
    expect(said('currencies-mixed', text.replace('EUR', 'USD'))).toEqual([]);
  });

  it('of one policy are told at its wage', () => {
    const text = 'policy Yard { currency USD\n labour 48 EUR per h }\n';
    const [finding] = said('currencies-mixed', text);
    expect(under(text, finding!)).toBe('labour 48 EUR per h');
    expect(said('currencies-mixed', policy)).toEqual([]);
  });

  it('of two plans meet even without a policy', () => {
    const text = `${tape(' at 58 EUR')}sealant Lap { cartridge 10.3 fl-oz at 9 USD }\n${rigWith('cap front 5 in wide', 'tape front with Strip4', 'seal front with Lap')}`;
    expect(said('currencies-mixed', text)).toHaveLength(1);
  });
});

describe('labour', () => {
  it('is missed once where work is planned', () => {
    const text = `policy Yard { currency USD }\n${rig('strip front', 'wash')}`;
    expect(said('no-labour', text)).toMatchObject([{ severity: 'information' }]);
    expect(said('no-labour', text)[0]?.message).toContain('the policy `Yard` does not say');
    expect(said('no-labour', policy + rig('strip front'))).toEqual([]);
    expect(said('no-labour', rigWith('inspect'))).toEqual([]);
    expect(said('no-labour', rigWith('wash'))[0]?.message).toContain('no policy says');
    // A policy that is not found may have said it: that it is not found is enough.
    expect(said('no-labour', rig('wash'))).toEqual([]);
    expect(said('unknown-name', rig('wash'))).toHaveLength(1);
    expect(said('no-labour', rigWith('group Nowhere', 'wash'))).toEqual([]);
  });
});

describe('a quote', () => {
  const text = policy + rig('quote "shop A" 1450 USD for recoat until 2027-03-31');

  it('expires, and says so before', () => {
    expect(said('quote-expires-soon', text, { asOf: '2027-02-28' })).toEqual([]);
    const [soon] = said('quote-expires-soon', text, { asOf: '2027-03-01' });
    expect(soon?.message).toContain('30 days more');
    expect(said('quote-expired', text, { asOf: '2027-03-31' })).toEqual([]);
    const [over] = said('quote-expired', text, { asOf: '2027-04-01' });
    expect(over?.message).toContain('1 day ago');
  });
});
