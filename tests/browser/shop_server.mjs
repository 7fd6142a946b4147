// A shop's server: an engine of the CouchDB protocol on a folder, with users, a closed database and CORS.
//
//   node shop_server.mjs FOLDER PORT ORIGIN...
//
// Answers on localhost. Killed at any moment and started again on the same folder, it goes on.

import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
const PouchDB = require("pouchdb-node");
const engine = require("express-pouchdb");

const [folder, port, ...origins] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
const configPath = `${folder}/config.json`;
if (!existsSync(configPath)) writeFileSync(configPath, JSON.stringify({ admins: { boss: "secret" } }));
const couch = engine(PouchDB.defaults({ prefix: `${folder}/` }), {
  configPath,
  logPath: `${folder}/log.txt`,
  overrideMode: { exclude: ["routes/fauxton"] },
});

createServer((request, answer) => {
  const { origin } = request.headers;
  if (origins.includes(origin)) {
    answer.setHeader("Access-Control-Allow-Origin", origin);
    answer.setHeader("Access-Control-Allow-Headers", "accept, authorization, content-type");
    answer.setHeader("Access-Control-Allow-Methods", "GET, HEAD, POST, PUT, DELETE");
  }
  if (request.method === "OPTIONS") answer.writeHead(204).end();
  else couch(request, answer);
}).listen(Number(port), "localhost", () => console.log("ready"));
