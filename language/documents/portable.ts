// Papers are the same on every machine.
import { isLibrary } from '../resolve/origin.ts';
import { relativeTo } from '../resolve/paths.ts';

/** The data with every `file` named as seen from a folder, and without keys that hold nothing. */
export function portable<T>(data: T, folder: string): T {
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== 'object' || value === null) return value;
    const out: Record<string, unknown> = {};
    for (const [key, inner] of Object.entries(value)) {
      if (inner === undefined) continue;
      const named = key === 'file' && typeof inner === 'string' && !isLibrary(inner);
      out[key] = named ? relativeTo(folder, inner) : walk(inner);
    }
    return out;
  };
  return walk(data) as T;
}
