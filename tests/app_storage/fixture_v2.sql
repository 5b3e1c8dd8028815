-- A database as version 2 of the schema wrote it, with a photo. Never changed: every later program must still open it.
PRAGMA application_id=1398230091;
PRAGMA user_version=2;
CREATE TABLE meta(key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE revision(digest BLOB PRIMARY KEY CHECK(length(digest)=32), survey_id TEXT NOT NULL,
  origin TEXT NOT NULL CHECK(origin IN('local','office','file')), body BLOB NOT NULL, signature BLOB,
  sealed_ms INTEGER NOT NULL) STRICT;
CREATE TABLE survey(survey_id TEXT PRIMARY KEY CHECK(length(survey_id)>0), title TEXT NOT NULL,
  base_digest BLOB REFERENCES revision(digest), state TEXT NOT NULL CHECK(state IN('draft','sealed','forked')),
  created_ms INTEGER NOT NULL, updated_ms INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE entry(survey_id TEXT NOT NULL REFERENCES survey, path TEXT NOT NULL,
  value TEXT NOT NULL CHECK(length(value)>0), updated_ms INTEGER NOT NULL,
  PRIMARY KEY(survey_id, path)) STRICT, WITHOUT ROWID;
CREATE TABLE edit(seq INTEGER PRIMARY KEY, survey_id TEXT NOT NULL REFERENCES survey, step INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK(kind IN('do','undo','redo')), label TEXT NOT NULL, path TEXT NOT NULL, old TEXT, new TEXT,
  at_ms INTEGER NOT NULL) STRICT;
CREATE INDEX edit_survey ON edit(survey_id, seq);
CREATE TABLE draft(survey_id TEXT PRIMARY KEY REFERENCES survey, path TEXT NOT NULL, text TEXT NOT NULL,
  at_ms INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE revision_parent(digest BLOB NOT NULL REFERENCES revision, parent BLOB NOT NULL,
  PRIMARY KEY(digest, parent)) STRICT, WITHOUT ROWID;
CREATE INDEX revision_parent_parent ON revision_parent(parent);
CREATE TABLE blob(digest BLOB PRIMARY KEY CHECK(length(digest)=32), bytes INTEGER NOT NULL, media TEXT NOT NULL,
  width INTEGER, height INTEGER, thumbnail BLOB, verified_ms INTEGER) STRICT, WITHOUT ROWID;
CREATE TABLE revision_blob(digest BLOB NOT NULL REFERENCES revision, blob BLOB NOT NULL REFERENCES blob,
  PRIMARY KEY(digest, blob)) STRICT, WITHOUT ROWID;
CREATE TABLE outbox(id INTEGER PRIMARY KEY, kind TEXT NOT NULL CHECK(kind IN('revision','blob')), digest BLOB NOT NULL,
  state TEXT NOT NULL CHECK(state IN('queued','sending','parked','done')), attempts INTEGER NOT NULL DEFAULT 0,
  upload_url TEXT, upload_offset INTEGER, last_status INTEGER, last_error TEXT, UNIQUE(kind, digest)) STRICT;
CREATE TABLE receipt(digest BLOB PRIMARY KEY, server TEXT NOT NULL, seq INTEGER NOT NULL, complete INTEGER NOT NULL,
  body BLOB NOT NULL, signature BLOB) STRICT, WITHOUT ROWID;
CREATE TABLE quarantine(id INTEGER PRIMARY KEY, at_ms INTEGER NOT NULL, why TEXT NOT NULL, body BLOB NOT NULL) STRICT;
CREATE TABLE blob_body(id INTEGER PRIMARY KEY, digest BLOB NOT NULL UNIQUE REFERENCES blob(digest),
  body BLOB NOT NULL CHECK(length(body)>0)) STRICT;
INSERT INTO meta VALUES('theme', 'sun');
INSERT INTO survey VALUES('v1', 'Plant', NULL, 'draft', 1000, 3000);
INSERT INTO entry VALUES('v1', '/site', '"Plant"', 1000), ('v1', '/crossings', '["door"]', 1000),
  ('v1', '/crossings/door/rise', '{"value_nm":6000000}', 3000);
INSERT INTO edit VALUES(1, 'v1', 1, 'do', 'edit', '/crossings/door/rise', '{"value_nm":19000000}', '{"value_nm":6000000}', 2000),
  (2, 'v1', 1, 'undo', 'edit', '/crossings/door/rise', '{"value_nm":6000000}', '{"value_nm":19000000}', 2500),
  (3, 'v1', 1, 'redo', 'edit', '/crossings/door/rise', '{"value_nm":19000000}', '{"value_nm":6000000}', 3000);
INSERT INTO draft VALUES('v1', '/crossings/door/gap', 'mm 32', 3100);
INSERT INTO blob VALUES(x'92b2fa58028958317e408bd84ecfa70f5ee35b121991dbc232c49d166353708b', 9, 'image/jpeg', 16, 12, NULL, NULL);
INSERT INTO blob_body VALUES(1, x'92b2fa58028958317e408bd84ecfa70f5ee35b121991dbc232c49d166353708b', x'612070696374757265');
