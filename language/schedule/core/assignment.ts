// Jobs to places, each place for one job, for the least cost in all: the Hungarian method (Kuhn 1955) with potentials and
// shortest augmenting paths, jobs x jobs x places steps.

/**
 * The least cost of giving each job a place of its own, undefined if that cannot be done. `cost` may be infinite where a place
 * will not do for a job.
 */
export function leastAssignment(
  jobs: number,
  places: number,
  cost: (job: number, place: number) => number,
): number | undefined {
  if (jobs > places) return undefined;
  // Numbers from 1; 0 stands for none.
  const ofJob = new Float64Array(jobs + 1);
  const ofPlace = new Float64Array(places + 1);
  const jobAt = new Int32Array(places + 1);
  for (let job = 1; job <= jobs; job++) {
    const reach = new Float64Array(places + 1).fill(Number.POSITIVE_INFINITY);
    const from = new Int32Array(places + 1);
    const seen = new Uint8Array(places + 1);
    jobAt[0] = job;
    let place = 0;
    do {
      seen[place] = 1;
      const here = jobAt[place] as number;
      let [least, next] = [Number.POSITIVE_INFINITY, 0];
      for (let other = 1; other <= places; other++) {
        if (seen[other]) continue;
        const reduced = cost(here - 1, other - 1) - (ofJob[here] as number) - (ofPlace[other] as number);
        if (reduced < (reach[other] as number)) {
          reach[other] = reduced;
          from[other] = place;
        }
        if ((reach[other] as number) < least) [least, next] = [reach[other] as number, other];
      }
      if (next === 0) return undefined;
      for (let other = 0; other <= places; other++) {
        if (seen[other]) {
          const mine = jobAt[other] as number;
          ofJob[mine] = (ofJob[mine] as number) + least;
          ofPlace[other] = (ofPlace[other] as number) - least;
        } else reach[other] = (reach[other] as number) - least;
      }
      place = next;
    } while (jobAt[place] !== 0);
    while (place !== 0) {
      const before = from[place] as number;
      jobAt[place] = jobAt[before] as number;
      place = before;
    }
  }
  let sum = 0;
  for (let place = 1; place <= places; place++) if (jobAt[place]) sum += cost((jobAt[place] as number) - 1, place - 1);
  return sum;
}
