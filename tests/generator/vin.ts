// Vehicle identification numbers of an invented maker, with the check digit of 49 CFR 565.15 as printed there.

const values: Readonly<Record<string, number>> = {
  ...Object.fromEntries([...'0123456789'].map((c) => [c, Number(c)])),
  ...Object.fromEntries([...'ABCDEFGH'].map((c, i) => [c, i + 1])),
  ...Object.fromEntries([...'JKLMN'].map((c, i) => [c, i + 1])),
  ...{ P: 7, R: 9 },
  ...Object.fromEntries([...'STUVWXYZ'].map((c, i) => [c, i + 2])),
};
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

export function vinOf(serial: number): string {
  const open = `1ZZBE2R1_GA${String(serial).padStart(6, '0')}`;
  const sum = [...open].reduce((total, c, i) => total + (values[c] ?? 0) * (weights[i] as number), 0);
  return open.replace('_', sum % 11 === 10 ? 'X' : String(sum % 11));
}
