// The one file that knows HiGHS, a solver of linear programs compiled to WebAssembly (MIT). It is loaded when first asked
// for: most rigs never need it. The loader looks for `highs.wasm` beside the module that it stands in: in the package
// itself, or beside the bundle.
import type { Highs, Model } from 'highs';
import type { Column, CoveringProgram, LinearPrograms } from '../../language/cutting/index.ts';

const OPTIMAL = 7;

/** Thrown inside `covering` when HiGHS fails or finds no optimum; never leaves this file. */
class GaveUp extends Error {}

let loading: Promise<LinearPrograms | undefined> | undefined;
let code: () => Promise<Uint8Array | undefined> = () => Promise.resolve(undefined);

/** Where the code of the solver comes from, if its loader cannot find it: in a worker of a browser. */
export function solverCodeFrom(get: () => Promise<Uint8Array | undefined>): void {
  code = get;
}

/**
 * The solver, loaded once and kept; undefined where it cannot be loaded: then the engine cuts without it. After a failure
 * inside HiGHS, whose memory cannot be trusted then, that solver answers nothing more and the next call loads a new one.
 */
export function loadLinearPrograms(): Promise<LinearPrograms | undefined> {
  loading ??= load();
  return loading;
}

async function load(): Promise<LinearPrograms | undefined> {
  let highs: Highs;
  try {
    const { default: start } = await import('highs');
    const bytes = await code();
    highs = await start(bytes && (await loadedFrom(bytes)));
  } catch {
    loading = undefined;
    return undefined;
  }
  return linearPrograms(highs, () => {
    loading = undefined;
  });
}

/** How the loader is given its code: it forgets a `wasmBinary` and looks for a file all the same. */
async function loadedFrom(bytes: Uint8Array): Promise<object> {
  const module = await WebAssembly.compile(new Uint8Array(bytes));
  return {
    instantiateWasm(imports: WebAssembly.Imports, done: (instance: WebAssembly.Instance) => void) {
      done(new WebAssembly.Instance(module, imports));
    },
  };
}

/** Linear programs on one instance of HiGHS. `broken` is called when the instance must not be used any more. */
export function linearPrograms(highs: Pick<Highs, 'createModel'>, broken: () => void): LinearPrograms {
  let usable = true;

  /** A call into HiGHS: whatever it throws, an abort of its memory included, is no bug of ours. */
  function attempt<T>(call: () => T): T {
    try {
      return call();
    } catch {
      usable = false;
      broken();
      throw new GaveUp();
    }
  }

  return {
    covering(demand, use) {
      if (!usable) return undefined;
      let model: Model | undefined;
      try {
        model = attempt(() => emptyModel(highs, demand));
        return use(program(model, demand.length, attempt));
      } catch (error) {
        if (error instanceof GaveUp) return undefined;
        throw error;
      } finally {
        if (model && usable) disposed(model, attempt);
      }
    },
  };
}

function disposed(model: Model, attempt: (call: () => void) => void): void {
  try {
    attempt(() => model.dispose());
  } catch {
    // The answer is there already; only the solver is lost.
  }
}

function emptyModel(highs: Pick<Highs, 'createModel'>, demand: ArrayLike<number>): Model {
  const model = highs.createModel({
    numCols: 0,
    numRows: demand.length,
    colCost: [],
    colLower: [],
    colUpper: [],
    rowLower: Float64Array.from(demand),
    rowUpper: new Float64Array(demand.length).fill(Number.POSITIVE_INFINITY),
    matrix: { format: 'csc', numRows: demand.length, numCols: 0, starts: [0], indices: [], values: [] },
  });
  // The basis of the last solution is worth more than presolve, which would throw it away.
  model.options.set({ output_flag: false, presolve: 'off', solver: 'simplex' });
  return model;
}

function program(model: Model, rows: number, attempt: <T>(call: () => T) => T): CoveringProgram {
  const all = { kind: 'range', from: 0, to: rows - 1 } as const;
  return {
    add: (columns) =>
      attempt(() => {
        if (columns.length > 0) model.addCols(columnData(columns, rows));
      }),
    demand: (of) =>
      attempt(() => {
        const none = new Float64Array(rows).fill(Number.POSITIVE_INFINITY);
        if (rows > 0) model.changeRowsBounds(all, Float64Array.from(of), none);
      }),
    solve: () => {
      if (attempt(() => model.run().modelStatus) !== OPTIMAL) throw new GaveUp();
      const solution = attempt(() => model.getSolution());
      return { uses: solution.colValue, duals: solution.rowDual };
    },
  };
}

function columnData(columns: readonly Column[], rows: number): Parameters<Model['addCols']>[0] {
  const starts = new Int32Array(columns.length + 1);
  for (const [i, column] of columns.entries()) starts[i + 1] = starts[i]! + column.rows.length;
  return {
    cost: Float64Array.from(columns, (column) => column.price),
    lower: new Float64Array(columns.length),
    upper: new Float64Array(columns.length).fill(Number.POSITIVE_INFINITY),
    matrix: {
      format: 'csc',
      numRows: rows,
      numCols: columns.length,
      starts,
      indices: Int32Array.from(columns.flatMap((column) => column.rows)),
      values: Float64Array.from(columns.flatMap((column) => column.values)),
    },
  };
}
