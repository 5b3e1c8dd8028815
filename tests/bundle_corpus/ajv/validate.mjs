// Prints one verdict for each document: node validate.mjs SCHEMA DOCUMENTS
import { readFileSync } from "node:fs";
import Ajv from "ajv/dist/2020.js";

const [schema, documents] = process.argv.slice(2).map((name) => JSON.parse(readFileSync(name, "utf8")));
const validate = new Ajv({ strict: true, allErrors: false }).compile(schema);
console.log(JSON.stringify(documents.map((document) => validate(document))));
