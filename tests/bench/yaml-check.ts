// The peer of `rigseam check`: every YAML file of a folder through the `yaml` and `ajv` packages. Prints findings with lines.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { LineCounter, parseDocument } from 'yaml';

const [folder, schema] = process.argv.slice(2) as [string, string];
const validate = new Ajv({ allErrors: true }).compile(JSON.parse(readFileSync(schema, 'utf8')));
let findings = 0;
let files = 0;
for (const name of readdirSync(folder).sort()) {
  const lines = new LineCounter();
  const document = parseDocument(readFileSync(join(folder, name), 'utf8'), { lineCounter: lines });
  files++;
  findings += document.errors.length;
  if (!validate(document.toJS())) findings += validate.errors?.length ?? 0;
}
console.log(`${files} files checked: ${findings} findings`);
