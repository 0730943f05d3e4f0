import { expect, it } from 'vitest';
import { stretch } from './view.ts';

const film = (lines: string) => stretch(`  ${lines}`, 'vent').film?.material;
const stripped = 'found 2024-05-01 vent with Sil\n  stripped 2024-06-01 vent';

it('silicone that was stripped leaves its film until something is laid or found there', () => {
  expect(film('found 2024-05-01 vent with Sil')).toBeUndefined();
  expect(film(stripped)).toBe('Sil');
  expect(film(stripped.replace('stripped', 'replaced'))).toBe('Sil');
  expect(film(`${stripped}\n  stripped 2024-06-02 vent`)).toBe('Sil');
  expect(film(`${stripped}\n  sealed 2024-06-03 vent with Lap`)).toBeUndefined();
  expect(film(`${stripped}\n  found 2024-06-03 vent with Lap`)).toBeUndefined();
  expect(film('stripped 2024-06-01 vent')).toBeUndefined();
});
