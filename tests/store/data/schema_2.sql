-- A campaign of schema 2, as the program of that schema wrote it.
PRAGMA application_id = 1651734384;
PRAGMA user_version = 2;
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE campaign (
  number INTEGER PRIMARY KEY CHECK (number = 1),
  title TEXT NOT NULL
) STRICT;
INSERT INTO campaign VALUES(1,'Cables at home');
CREATE TABLE cable (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  construction TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
INSERT INTO cable VALUES(1,'heavy-pair','[["geometry","twisted pair"],["cross-section","4mm2"]]','');
INSERT INTO cable VALUES(2,'bell wire','[["geometry","parallel"],["cross-section","0.5mm2"]]','from the attic');
CREATE TABLE baseline (
  number INTEGER PRIMARY KEY,
  cable TEXT NOT NULL REFERENCES cable (name)
) STRICT;
INSERT INTO baseline VALUES(1,'bell wire');
INSERT INTO baseline VALUES(2,'heavy-pair');
CREATE TABLE rig (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('loudspeaker', 'line level')),
  source_resistance_ohm TEXT NOT NULL,
  source_inductance_henry TEXT NOT NULL,
  load TEXT NOT NULL,
  rated_impedance_ohm TEXT NOT NULL,
  volume_step_db TEXT NOT NULL,
  level_note TEXT NOT NULL,
  programme_note TEXT NOT NULL
) STRICT;
INSERT INTO rig VALUES(1,'living room','loudspeaker','0.05','1e-6','','8','0.5','72 dBA at the seat','speech');
CREATE TABLE source (
  number INTEGER PRIMARY KEY,
  sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64),
  name TEXT NOT NULL,
  text BLOB NOT NULL
) STRICT;
INSERT INTO source VALUES(1,'d2c6a459844a75db4fcd06d9c15495f749f36452ab51a38e4c24ed8dee7a23da','lcr.csv',X'6361626c653b6c656e6774685f6d3b726573697374616e63655f6f686d0d0a62656c6c20776972653b333b302c32340d0a');
INSERT INTO source VALUES(2,'fc414d7b47a98155996a892486914da00dc97296a18af1001fafb765cceb2d3c','room.csv',X'6672657175656e63795f487a2c6d61676e69747564655f6f686d2c70686173655f6465670a3130302c382c300a313030302c362e352c2d31300a');
CREATE TABLE reading (
  number INTEGER PRIMARY KEY,
  kind TEXT NOT NULL,
  cable TEXT REFERENCES cable (name),
  rig TEXT REFERENCES rig (name),
  piece TEXT NOT NULL,
  condition TEXT NOT NULL,
  repeat INTEGER NOT NULL,
  file TEXT NOT NULL,
  sha256 TEXT NOT NULL REFERENCES source (sha256),
  note TEXT NOT NULL,
  columns TEXT NOT NULL,
  as_typed TEXT NOT NULL,
  numbers BLOB NOT NULL
) STRICT;
INSERT INTO reading VALUES(1,'cable-lcr','bell wire',NULL,'left','',1,'lcr.csv','d2c6a459844a75db4fcd06d9c15495f749f36452ab51a38e4c24ed8dee7a23da','','["length_m","resistance_ohm"]','[["length_m","3"],["resistance_ohm","0,24"]]',X'0000000000000840b81e85eb51b8ce3f');
INSERT INTO reading VALUES(2,'impedance',NULL,'living room','','',1,'room.csv','fc414d7b47a98155996a892486914da00dc97296a18af1001fafb765cceb2d3c','','["frequency_hz","magnitude_ohm","phase_deg"]','[]',X'00000000000059400000000000408f4000000000000020400000000000001a40000000000000000000000000000024c0');
CREATE TABLE plan (
  number INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  text TEXT NOT NULL,
  seed BLOB NOT NULL CHECK (length(seed) = 32),
  commitment BLOB NOT NULL CHECK (length(commitment) = 32)
) STRICT;
INSERT INTO "plan" VALUES(1,'spring','{"name":"spring"}',X'3c978f366bbcb00c5b9c1a8e12fdd05b5abb4fe8794d87e86b0eed1fdf235b81',X'faa0361944431ccecce75b76e1ec6a622ba9719b4e459161870fab1c1719eae3');
CREATE TABLE event (
  plan INTEGER NOT NULL REFERENCES plan (number),
  sitting INTEGER NOT NULL CHECK (sitting >= 0),
  number INTEGER NOT NULL,
  text TEXT NOT NULL,
  head TEXT NOT NULL CHECK (length(head) = 64),
  PRIMARY KEY (plan, sitting, number)
) STRICT, WITHOUT ROWID;
INSERT INTO event VALUES(1,0,1,'{"number":1,"words":"sealed"}','24ffc806f35b1d646cd84323cc9424a49f7dba5bdaf787fa72fbf1891bb250ff');
INSERT INTO event VALUES(1,1,1,'{"number":1,"words":"answer"}','d885a25fe3c0defef0bb3ad0b77067cc0ce7de5866cec0ea504157aac870233c');
INSERT INTO event VALUES(1,1,2,'{"number":2,"words":"answer"}','4ba1ab775bf08f39649f275c6f02a34c49c9779943b92ee300e5996bf62be9a5');
INSERT INTO event VALUES(1,1,3,'{"number":3,"words":"answer"}','8b01e69184b62acb8f82dec18cdbe4920fa6de5f43c2c9be23d0246cffb77b0b');
CREATE TRIGGER campaign_never_changes BEFORE UPDATE ON campaign BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER campaign_never_shrinks BEFORE DELETE ON campaign BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER campaign_never_replaces BEFORE INSERT ON campaign WHEN EXISTS (SELECT 1 FROM campaign) BEGIN SELECT RAISE(ABORT, 'a campaign has one title'); END;
CREATE TRIGGER cable_never_changes BEFORE UPDATE ON cable BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER cable_never_shrinks BEFORE DELETE ON cable BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER cable_never_replaces BEFORE INSERT ON cable WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM cable) OR EXISTS (SELECT 1 FROM cable WHERE name = NEW.name) BEGIN SELECT RAISE(ABORT, 'the cable is there already'); END;
CREATE TRIGGER baseline_never_changes BEFORE UPDATE ON baseline BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER baseline_never_shrinks BEFORE DELETE ON baseline BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER baseline_never_replaces BEFORE INSERT ON baseline WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM baseline) BEGIN SELECT RAISE(ABORT, 'another baseline was named at the same time'); END;
CREATE TRIGGER rig_never_changes BEFORE UPDATE ON rig BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER rig_never_shrinks BEFORE DELETE ON rig BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER rig_never_replaces BEFORE INSERT ON rig WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM rig) OR EXISTS (SELECT 1 FROM rig WHERE name = NEW.name) BEGIN SELECT RAISE(ABORT, 'the rig is there already'); END;
CREATE TRIGGER source_never_changes BEFORE UPDATE ON source BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER source_never_shrinks BEFORE DELETE ON source BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER source_never_replaces BEFORE INSERT ON source WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM source) OR EXISTS (SELECT 1 FROM source WHERE sha256 = NEW.sha256) BEGIN SELECT RAISE(ABORT, 'the file is there already'); END;
CREATE TRIGGER reading_never_changes BEFORE UPDATE ON reading BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER reading_never_shrinks BEFORE DELETE ON reading BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER reading_never_replaces BEFORE INSERT ON reading WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM reading) OR EXISTS (SELECT 1 FROM reading WHERE sha256 = NEW.sha256 AND cable IS NEW.cable AND rig IS NEW.rig AND piece = NEW.piece AND condition = NEW.condition AND repeat = NEW.repeat) BEGIN SELECT RAISE(ABORT, 'the reading is there already'); END;
CREATE TRIGGER plan_never_changes BEFORE UPDATE ON plan BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER plan_never_shrinks BEFORE DELETE ON plan BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER plan_never_replaces BEFORE INSERT ON plan WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM plan) OR EXISTS (SELECT 1 FROM plan WHERE name = NEW.name) BEGIN SELECT RAISE(ABORT, 'the plan is there already'); END;
CREATE TRIGGER event_never_changes BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER event_never_shrinks BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER event_never_replaces BEFORE INSERT ON event WHEN NEW.number IS NOT (SELECT 1 + coalesce(max(number), 0) FROM event WHERE plan = NEW.plan AND sitting = NEW.sitting) BEGIN SELECT RAISE(ABORT, 'another writer was first; nothing was kept, try again'); END;
CREATE INDEX reading_of_source ON reading (sha256);
CREATE TABLE link_key (
  number INTEGER PRIMARY KEY CHECK (number = 1),
  key BLOB NOT NULL CHECK (length(key) = 32)
) STRICT;
INSERT INTO link_key VALUES(1,X'000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f');
CREATE TRIGGER link_key_never_changes BEFORE UPDATE ON link_key BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing in it is changed'); END;
CREATE TRIGGER link_key_never_shrinks BEFORE DELETE ON link_key BEGIN SELECT RAISE(ABORT, 'a campaign only grows: nothing is removed from it'); END;
CREATE TRIGGER link_key_never_replaces BEFORE INSERT ON link_key WHEN EXISTS (SELECT 1 FROM link_key) BEGIN SELECT RAISE(ABORT, 'the links are drawn already'); END;
COMMIT;
