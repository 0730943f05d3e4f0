// Writes the JSON Schemas beside this file: `npm run generate:schemas`.
import { writeFileSync } from 'node:fs';
import { jsonSchemas, printSchema } from '../../language/documents/schemas.ts';

for (const [name, schema] of Object.entries(jsonSchemas()))
  writeFileSync(new URL(name, import.meta.url), printSchema(schema));
