// Materials and surfaces with everything that `like` and the built-in library add to what was written.
import type { MaterialKind } from '../statements/file.ts';
import type { Range, ThreePoints } from '../statements/slots/lists.ts';
import type { Family, Solvent } from '../statements/words.ts';
import type { Length } from '../values/length.ts';
import type { Money } from '../values/money.ts';
import type { Counted } from '../values/numbers.ts';
import type { Duration, Period } from '../values/period.ts';
import type { Coverage } from '../values/rate.ts';
import type { Temperature } from '../values/temperature.ts';
import type { Volume } from '../values/volume.ts';
import type { Origin, Stated } from './stated.ts';

/** Whether a material may lie on a surface: usual, only by its label, after a test patch, never. */
export type Grade = 'yes' | 'label' | 'test' | 'never';

export type ClockName = 'skin' | 'rain' | 'drive' | 'wash';

export interface OnSale<T> {
  readonly size: T;
  readonly price?: Money;
  readonly origin: Origin;
}

interface MaterialBase<K extends MaterialKind> {
  readonly kind: K;
  readonly name: string;
  readonly origin: Origin;
  readonly doc?: string;
  readonly family?: Stated<Family>;
  /** By surface: what may lie on what. A surface that is missing here is not known for this material. */
  readonly bonding: Readonly<Record<string, Stated<Grade>>>;
  readonly apply?: Stated<Range<Temperature>>;
  readonly surfaceUpTo?: Stated<Temperature>;
  readonly clocks: Readonly<Partial<Record<ClockName, Stated<Range<Duration>>>>>;
  /** When tape may go over it; `never` for a material that takes no tape; missing where nothing is known. */
  readonly cover?: Stated<Range<Duration> | 'never'>;
  /** Service life; with surfaces, it holds on those only. */
  readonly lives: readonly (Stated<ThreePoints<Period>> & { readonly on?: readonly string[] })[];
  readonly containers: readonly OnSale<Volume>[];
  readonly covers?: Stated<Coverage>;
  readonly passes: Stated<number>;
}

export interface Tape extends MaterialBase<'tape'> {
  readonly width?: Stated<Length>;
  readonly rolls: readonly OnSale<Length>[];
  readonly endLap: Stated<Length>;
  readonly sideLap: Stated<Length>;
}

export interface Sealant extends MaterialBase<'sealant'> {
  readonly grade?: Stated<'self-levelling' | 'non-sag'>;
  readonly cartridges: readonly OnSale<Volume>[];
  readonly cases: readonly OnSale<Counted>[];
  readonly bead?: Stated<{
    readonly width: Length;
    readonly height: Length;
    readonly section: 'rectangle' | 'fillet' | 'half-round' | 'dome';
  }>;
  readonly coatsAtMost: Stated<number>;
  readonly lookHard?: Stated<Period>;
}

export interface Primer extends MaterialBase<'primer'> {
  readonly neededOn: readonly Stated<string>[];
  readonly flash?: Stated<Range<Duration>>;
}

export interface Cleaner extends MaterialBase<'cleaner'> {
  readonly solvent?: Stated<Solvent>;
  readonly flash?: Stated<Range<Duration>>;
}

export interface Coating extends MaterialBase<'coating'> {}

export type Material = Tape | Sealant | Primer | Cleaner | Coating;

export type SurfaceGroup =
  | 'rubber'
  | 'thermoplastic'
  | 'moulded'
  | 'metal'
  | 'plastic'
  | 'wood'
  | 'sealant'
  | 'coating'
  | 'tape'
  | 'unknown';
export interface Surface {
  readonly name: string;
  readonly origin: Origin;
  readonly group: SurfaceGroup;
  readonly life?: Stated<ThreePoints<Period>>;
  readonly caution?: Stated<string>;
}
