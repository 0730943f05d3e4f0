// The unit letters that are written beside blanks.
import type { System } from '../../values/display.ts';

export const temperatureUnit = (system: System): 'F' | 'C' => (system === 'us' ? 'F' : 'C');
