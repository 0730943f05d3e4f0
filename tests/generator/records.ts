// What is generated, before it is printed as `.rig` text or as YAML: a rig with its years of records and its plans.

export interface Look {
  readonly seam: string;
  readonly condition: string;
  readonly from?: string;
  readonly to?: string;
  readonly moisture?: string;
  readonly inside?: string;
  readonly note?: string;
}

export interface Done {
  readonly verb: string;
  readonly date: string;
  readonly until?: string;
  readonly time?: string;
  readonly seams?: readonly string[];
  readonly inside?: string;
  readonly suspect?: string;
  readonly moisture?: string;
  /** Materials in the order in which they were used, each with its amount. */
  readonly with?: readonly string[];
  readonly lot?: string;
  readonly air?: string;
  readonly surface?: string;
  readonly humidity?: string;
  readonly took?: string;
  readonly by?: string;
  readonly note?: string;
  readonly looks?: readonly Look[];
}

export interface Plan {
  readonly verb: string;
  readonly seams?: readonly string[];
  readonly with?: readonly string[];
  readonly after?: string;
  readonly before?: string;
}

export interface GeneratedRig {
  readonly name: string;
  readonly like: string;
  /** One of the two says which policy holds. */
  readonly under?: string;
  readonly group?: string;
  readonly unit: string;
  readonly vin: string;
  readonly built: string;
  readonly acquired: string;
  readonly kept: string;
  readonly rate: string;
  readonly done: readonly Done[];
  readonly plans: readonly Plan[];
}
