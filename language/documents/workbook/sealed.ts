// The bytes of a workbook, the same on every machine.
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';

const properties = 'docProps/core.xml';
const times = /(<dcterms:(created|modified)\b[^>]*>)[^<]*/g;

/**
 * Packs a workbook anew: its times are noon of the as-of date, its compression is that of one library, whatever the clock
 * and the platform have to offer. A zip tells no time before 1980; earlier dates are told as its first noon.
 */
export function sealed(workbook: Uint8Array, asOf: string): Uint8Array {
  const files = unzipSync(workbook);
  const core = files[properties];
  const dated = core ? { [properties]: strToU8(strFromU8(core).replace(times, `$1${asOf}T12:00:00Z`)) } : {};
  // Without a zone: it is read as the time of the place and written as the time of the place.
  const mtime = asOf < '1980-01-01' ? '1980-01-01T12:00:00' : `${asOf}T12:00:00`;
  return zipSync({ ...files, ...dated }, { level: 6, mtime });
}
