// A program run to its end as a process of its own, with its time and its peak of memory.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

export interface Run {
  readonly seconds: number;
  readonly peakMb: number;
  readonly output: string;
}

/** The resident set's high-water mark of a process in MB, as the kernel counts it; 0 where it does not tell. */
export function peakOf(pid: number | undefined): number {
  try {
    return Number(readFileSync(`/proc/${pid}/status`, 'utf8').match(/VmHWM:\s+(\d+)/)?.[1] ?? 0) / 1024;
  } catch {
    // It has just ended, or this system has no such file.
    return 0;
  }
}

export function run(args: readonly string[]): Promise<Run> {
  return new Promise((done, failed) => {
    const start = performance.now();
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
    let output = '';
    let peakMb = 0;
    child.stdout.on('data', (chunk) => {
      output += chunk;
    });
    const poll = setInterval(() => {
      peakMb = Math.max(peakMb, peakOf(child.pid));
    }, 10);
    child.on('error', failed);
    child.on('close', () => {
      clearInterval(poll);
      done({ seconds: (performance.now() - start) / 1000, peakMb, output });
    });
  });
}

export const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] as number;
