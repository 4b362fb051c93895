SELECT pg_catalog.set_config('search_path', '', false);
CREATE SCHEMA tenter;
CREATE TABLE tenter.about (
    application text NOT NULL,
    schema integer NOT NULL,
    CONSTRAINT about_application_check CHECK ((application = 'tenter'::text))
);
CREATE TABLE tenter.entry (
    log integer NOT NULL,
    id text NOT NULL COLLATE pg_catalog."C",
    subject text NOT NULL COLLATE pg_catalog."C",
    arrival bigint NOT NULL,
    body json NOT NULL,
    CONSTRAINT entry_arrival_check CHECK ((arrival > 0)),
    CONSTRAINT entry_id_check CHECK ((length(id) = 26)),
    CONSTRAINT entry_subject_check CHECK ((length(subject) = 26))
);
CREATE TABLE tenter.fabric (
    log integer NOT NULL,
    id text NOT NULL COLLATE pg_catalog."C",
    tag integer NOT NULL,
    name text NOT NULL,
    fibre text NOT NULL,
    construction text NOT NULL,
    width integer,
    length integer,
    mg_per_m2 bigint,
    place text NOT NULL,
    note text NOT NULL,
    washed boolean NOT NULL,
    shop json,
    washed_lengthwise json,
    washed_crosswise json,
    dropped boolean NOT NULL,
    last_washed bigint,
    more json NOT NULL,
    hand_dof double precision DEFAULT 0 NOT NULL,
    hand_sum double precision DEFAULT 0 NOT NULL,
    CONSTRAINT fabric_construction_check CHECK ((construction = ANY (ARRAY['woven'::text, 'knit'::text, 'other'::text]))),
    CONSTRAINT fabric_length_check CHECK ((length >= 0))
);
CREATE TABLE tenter.log (
    number integer NOT NULL,
    name text NOT NULL COLLATE pg_catalog."C"
);
ALTER TABLE tenter.log ALTER COLUMN number ADD GENERATED ALWAYS AS IDENTITY (
    SEQUENCE NAME tenter.log_number_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1
);
CREATE TABLE tenter.orphan (
    log integer NOT NULL,
    subject text NOT NULL COLLATE pg_catalog."C",
    waits_for text NOT NULL COLLATE pg_catalog."C"
);
CREATE TABLE tenter.pattern (
    log integer NOT NULL,
    id text NOT NULL COLLATE pg_catalog."C",
    name text NOT NULL,
    note text NOT NULL,
    dropped boolean NOT NULL
);
CREATE TABLE tenter.role (
    log integer NOT NULL,
    id text NOT NULL COLLATE pg_catalog."C",
    pattern text NOT NULL COLLATE pg_catalog."C",
    view text NOT NULL,
    name text NOT NULL,
    asks json NOT NULL,
    note text NOT NULL,
    dropped boolean NOT NULL
);
CREATE TABLE tenter.test (
    log integer NOT NULL,
    id text NOT NULL COLLATE pg_catalog."C",
    fabric text COLLATE pg_catalog."C",
    tag integer,
    grain text NOT NULL,
    pulled bigint NOT NULL,
    clock_unset boolean NOT NULL,
    device bigint,
    number bigint,
    note text NOT NULL,
    record bytea NOT NULL,
    stretch_percent double precision NOT NULL,
    growth_percent double precision,
    hand_dof double precision NOT NULL,
    hand_sum double precision NOT NULL,
    dropped boolean NOT NULL,
    CONSTRAINT test_grain_check CHECK ((grain = ANY (ARRAY['lengthwise'::text, 'crosswise'::text, 'bias'::text])))
);
INSERT INTO tenter.about VALUES ('tenter', 3);
INSERT INTO tenter.entry VALUES (1, '01M2K0HR231DK01R1X5KSWJNW9', '01M2K0HR231DK01R1X5KSWJNW9', 1, '{"kind":"fabric-added","tag":1,"name":"Vestry twill","fibre":"97 cotton 3 elastane","construction":"woven","width_mm":1480.0,"length_mm":3100.0,"mg_per_m2":235000,"place":"blue crate","note":"soft, holds a crease"}');
INSERT INTO tenter.entry VALUES (1, '01M2K0RHN24D3FR9ZD2ARGGXX9', '01M2K0RHN24D3FR9ZD2ARGGXX9', 2, '{"kind":"fabric-added","tag":2,"name":"Choirstall suiting","fibre":"wool, polyester, a little elastane","construction":"woven","width_mm":1500.0,"length_mm":2700.0,"mg_per_m2":240000,"place":"blue crate","note":""}');
INSERT INTO tenter.entry VALUES (1, '01M2K0YTA656KF29GEQHYNDATP', '01M2K0YTA656KF29GEQHYNDATP', 3, '{"kind":"fabric-added","tag":3,"name":"Footlight drill","fibre":"cotton","construction":"woven","width_mm":1450.0,"length_mm":4500.0,"mg_per_m2":215000,"place":"under the bench","note":"does not give"}');
INSERT INTO tenter.entry VALUES (1, '01M2K13RY8J66DCW638B3CSTCP', '01M2K13RY8J66DCW638B3CSTCP', 4, '{"kind":"fabric-added","tag":4,"name":"Staircase corduroy","fibre":"cotton, elastane","construction":"woven","width_mm":1420.0,"length_mm":2600.0,"mg_per_m2":290000,"place":"shelf","note":"fine wale; the pile runs up"}');
INSERT INTO tenter.entry VALUES (1, '01M2K177BX012BK1ZQR769R9N8', '01M2K177BX012BK1ZQR769R9N8', 5, '{"kind":"fabric-added","tag":5,"name":"Practice sateen","fibre":"cotton, elastane","construction":"woven","width_mm":1400.0,"length_mm":900.0,"mg_per_m2":190000,"place":"school cupboard","note":"the class of twelve pulls this one"}');
INSERT INTO tenter.entry VALUES (1, '01M2K1DA8MY53GXJQR53HFF5AK', '01M2K1DA8MY53GXJQR53HFF5AK', 6, '{"kind":"fabric-added","tag":8,"name":"Doorway rib","fibre":"95 cotton 5 elastane","construction":"knit","width_mm":800.0,"length_mm":700.0,"mg_per_m2":260000,"place":"basket","note":"","washed":true}');
INSERT INTO tenter.entry VALUES (1, '01M2K1FYWHW40MN7S9D1SZG3JJ', '01M2K1FYWHW40MN7S9D1SZG3JJ', 7, '{"kind":"fabric-added","tag":9,"name":"Curtain jersey","fibre":"78 polyamide 22 elastane","construction":"knit","width_mm":1550.0,"length_mm":1600.0,"mg_per_m2":230000,"place":"basket","note":""}');
INSERT INTO tenter.entry VALUES (1, '01M2K1HPAQZE5FYWP4DQ58ZFHN', '01M2K1HPAQZE5FYWP4DQ58ZFHN', 8, '{"kind":"fabric-added","tag":10,"name":"Prompter ponte","fibre":"65 viscose 30 polyamide 5 elastane","construction":"knit","width_mm":1550.0,"length_mm":3000.0,"mg_per_m2":300000,"place":"basket","note":"","washed":true}');
INSERT INTO tenter.entry VALUES (1, '01M2K1RQFJB8YFKPGBYFM1D5N6', '01M2K1RQFJB8YFKPGBYFM1D5N6', 9, '{"kind":"fabric-added","tag":12,"name":"Wings lining","fibre":"polyester, knitted","construction":"knit","width_mm":1500.0,"length_mm":3500.0,"mg_per_m2":75000,"place":"shelf","note":""}');
INSERT INTO tenter.entry VALUES (1, '01M2K1YV1JGXDH6QB3SW9974JC', '01M2K1YV1JGXDH6QB3SW9974JC', 10, '{"kind":"fabric-added","tag":14,"name":"Stagehand interfacing","fibre":"polyester, fusible web","construction":"other","width_mm":900.0,"length_mm":3000.0,"mg_per_m2":45000,"place":"shelf","note":"not woven; one side melts"}');
INSERT INTO tenter.entry VALUES (1, '01M2K22C5TECRJKTHTFEJEME9R', '01M2K22C5TECRJKTHTFEJEME9R', 11, '{"kind":"fabric-added","tag":15,"name":"Interval elastic","fibre":"polyester, rubber","construction":"other","width_mm":35.0,"length_mm":8000.0,"place":"tin","note":"for pull-on waists"}');
INSERT INTO tenter.entry VALUES (1, '01M2K286F1SAB3MNMYWH9ABN13', '01M2K286F1SAB3MNMYWH9ABN13', 12, '{"kind":"fabric-added","tag":16,"name":"Thunder ripstop","fibre":"polyamide","construction":"woven","width_mm":1500.0,"length_mm":1200.0,"mg_per_m2":60000,"place":"under the bench","note":"from a stage flag"}');
INSERT INTO tenter.entry VALUES (1, '01M35129FV8KKM7ESRK2P5J5BH', '01M2K0HR231DK01R1X5KSWJNW9', 13, '{"kind":"fabric-washed","fabric":"01M2K0HR231DK01R1X5KSWJNW9","grain":"lengthwise","before":500.0,"after":491.0,"division":1.0,"note":"40 °C, dried flat"}');
INSERT INTO tenter.entry VALUES (1, '01M3516NYBG4827K1S1J9N9M73', '01M2K0HR231DK01R1X5KSWJNW9', 14, '{"kind":"fabric-washed","fabric":"01M2K0HR231DK01R1X5KSWJNW9","grain":"crosswise","before":500.0,"after":497.0,"division":1.0,"note":"40 °C, dried flat"}');
INSERT INTO tenter.entry VALUES (1, '01M351NQDJ4VGGPGAJS16HVNYY', '01M351NQDJ4VGGPGAJS16HVNYY', 15, '{"kind":"test-stored","fabric":"01M2K1FYWHW40MN7S9D1SZG3JJ","pulled":"2026-09-22T17:12:33.458Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":171.0},{"extended_mm":172.0},{"extended_mm":171.0,"rests":[{"seconds":60,"recovered_mm":103.0},{"seconds":1800,"recovered_mm":102.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M351V57TRY0R8P1J1H4BMADH', '01M351V57TRY0R8P1J1H4BMADH', 16, '{"kind":"test-stored","fabric":"01M2K1FYWHW40MN7S9D1SZG3JJ","pulled":"2026-09-22T17:15:31.45Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":149.0},{"extended_mm":150.0},{"extended_mm":150.0,"rests":[{"seconds":60,"recovered_mm":103.0},{"seconds":1800,"recovered_mm":102.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M35271X3CWWQN8EAM1KDWBMP', '01M35271X3CWWQN8EAM1KDWBMP', 17, '{"kind":"test-stored","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","pulled":"2026-09-22T17:22:01.251Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":156.0},{"extended_mm":154.0},{"extended_mm":155.0,"rests":[{"seconds":60,"recovered_mm":105.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M352KNWAA453BAM519PQNWHK', '01M352KNWAA453BAM519PQNWHK', 18, '{"kind":"test-stored","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","pulled":"2026-09-22T17:28:54.922Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":130.0},{"extended_mm":131.0},{"extended_mm":129.0,"rests":[{"seconds":60,"recovered_mm":103.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M3Q4D5TZ3YG2W9KQMVCT7KMY', '01M3Q4D5TZ3YG2W9KQMVCT7KMY', 19, '{"kind":"test-stored","fabric":"01M2K0HR231DK01R1X5KSWJNW9","pulled":"2026-09-29T17:46:38.815Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":271.0},{"extended_mm":272.0},{"extended_mm":271.0,"rests":[{"seconds":60,"recovered_mm":252.0},{"seconds":1800,"recovered_mm":251.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M3Q4MWRJMGV7VJRP3BC1TEHS', '01M3Q4MWRJMGV7VJRP3BC1TEHS', 20, '{"kind":"test-stored","fabric":"01M2K0HR231DK01R1X5KSWJNW9","pulled":"2026-09-29T17:50:51.666Z","test":{"grain":"lengthwise","gauge_mm":250.0,"pulls":[{"extended_mm":252.0},{"extended_mm":253.0},{"extended_mm":252.0,"rests":[{"seconds":60,"recovered_mm":250.0},{"seconds":1800,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M3Q4ZNNZ2E5Y04G3H2YT83FN', '01M3Q4ZNNZ2E5Y04G3H2YT83FN', 21, '{"kind":"test-stored","fabric":"01M2K0RHN24D3FR9ZD2ARGGXX9","pulled":"2026-09-29T17:56:44.863Z","note":"in the break, one pull","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":106.0,"rests":[{"seconds":60,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M3Q5ARB1XWP9G1KP07JKFTQA', '01M3Q5ARB1XWP9G1KP07JKFTQA', 22, '{"kind":"test-stored","fabric":"01M2K0YTA656KF29GEQHYNDATP","pulled":"2026-09-29T18:02:48.033Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":252.0},{"extended_mm":252.0},{"extended_mm":252.0,"rests":[{"seconds":60,"recovered_mm":250.0},{"seconds":1800,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M3Q5P21ZERA1QZ12X9YEZNE5', '01M3Q5P21ZERA1QZ12X9YEZNE5', 23, '{"kind":"test-stored","fabric":"01M2K0YTA656KF29GEQHYNDATP","pulled":"2026-09-29T18:08:58.431Z","test":{"grain":"lengthwise","gauge_mm":250.0,"pulls":[{"extended_mm":251.0},{"extended_mm":251.0},{"extended_mm":251.0,"rests":[{"seconds":60,"recovered_mm":250.0},{"seconds":1800,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M3Q7PMYDD7ZYXFE5GB0WMX3A', '01M3Q7PMYDD7ZYXFE5GB0WMX3A', 24, '{"kind":"test-stored","fabric":"01M2K13RY8J66DCW638B3CSTCP","pulled":"2026-09-29T18:44:14.925Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":245.0},{"extended_mm":246.0},{"extended_mm":245.0,"rests":[{"seconds":60,"recovered_mm":206.0},{"seconds":1800,"recovered_mm":204.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M3Q7WQA76W1QVGQQY7FFR4A0', '01M3Q7WQA76W1QVGQQY7FFR4A0', 25, '{"kind":"test-stored","fabric":"01M2K13RY8J66DCW638B3CSTCP","pulled":"2026-09-29T18:47:33.959Z","test":{"grain":"lengthwise","gauge_mm":200.0,"pulls":[{"extended_mm":204.0},{"extended_mm":205.0},{"extended_mm":204.0,"rests":[{"seconds":60,"recovered_mm":200.0},{"seconds":1800,"recovered_mm":200.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M492TANMNF3JN0S381Z9N4PX', '01M492TANMNF3JN0S381Z9N4PX', 26, '{"kind":"fabric-added","tag":11,"name":"Gym hall jersey","fibre":"polyamide, elastane; twenty years old","construction":"knit","width_mm":1400.0,"length_mm":1500.0,"place":"attic","note":"no spring left"}');
INSERT INTO tenter.entry VALUES (1, '01M493155XNVYWWKQNCDVW7M0D', '01M493155XNVYWWKQNCDVW7M0D', 27, '{"kind":"test-stored","fabric":"01M492TANMNF3JN0S381Z9N4PX","pulled":"2026-10-06T17:08:56.125Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":158.0},{"extended_mm":160.0,"rests":[{"seconds":60,"recovered_mm":131.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4950PDGCWZDHED7KS1KC3CB', '01M4950PDGCWZDHED7KS1KC3CB', 28, '{"kind":"test-stored","fabric":"01M2K1RQFJB8YFKPGBYFM1D5N6","pulled":"2026-10-06T17:43:38.16Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":224.0},{"extended_mm":225.0},{"extended_mm":224.0,"rests":[{"seconds":60,"recovered_mm":202.0},{"seconds":1800,"recovered_mm":201.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M495B9MJMAP807N3JQSGC2DK', '01M495B9MJMAP807N3JQSGC2DK', 29, '{"kind":"test-stored","fabric":"01M2K1RQFJB8YFKPGBYFM1D5N6","pulled":"2026-10-06T17:49:25.522Z","test":{"grain":"lengthwise","gauge_mm":200.0,"pulls":[{"extended_mm":216.0},{"extended_mm":217.0},{"extended_mm":216.0,"rests":[{"seconds":60,"recovered_mm":202.0},{"seconds":1800,"recovered_mm":201.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M495MYT72VFG48W7GGBCPTQ4', '01M495MYT72VFG48W7GGBCPTQ4', 30, '{"kind":"test-stored","fabric":"01M2K1DA8MY53GXJQR53HFF5AK","pulled":"2026-10-06T17:54:42.119Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":178.0},{"extended_mm":181.0},{"extended_mm":179.0,"rests":[{"seconds":60,"recovered_mm":105.0},{"seconds":1800,"recovered_mm":104.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M495VQFC7N54CNN14P63FT3P', '01M495VQFC7N54CNN14P63FT3P', 31, '{"kind":"test-stored","fabric":"01M2K286F1SAB3MNMYWH9ABN13","pulled":"2026-10-06T17:58:23.98Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":255.0},{"extended_mm":255.0},{"extended_mm":256.0,"rests":[{"seconds":60,"recovered_mm":251.0},{"seconds":1800,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M49673A32DXZ9G5GMY1PJEDH', '01M49673A32DXZ9G5GMY1PJEDH', 32, '{"kind":"test-stored","fabric":"01M2K1YV1JGXDH6QB3SW9974JC","pulled":"2026-10-06T18:04:36.547Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":209.0},{"extended_mm":208.0},{"extended_mm":209.0,"rests":[{"seconds":60,"recovered_mm":202.0},{"seconds":1800,"recovered_mm":201.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M496EVCP1ZXY65KTMNR9C7GP', '01M496EVCP1ZXY65KTMNR9C7GP', 33, '{"kind":"test-stored","fabric":"01M2K1YV1JGXDH6QB3SW9974JC","pulled":"2026-10-06T18:08:50.582Z","test":{"grain":"lengthwise","gauge_mm":200.0,"pulls":[{"extended_mm":203.0},{"extended_mm":203.0},{"extended_mm":204.0,"rests":[{"seconds":60,"recovered_mm":200.0},{"seconds":1800,"recovered_mm":200.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M496KH4QNNE4HM3S6SVM8XTM', '01M496KH4QNNE4HM3S6SVM8XTM', 34, '{"kind":"test-stored","fabric":"01M2K22C5TECRJKTHTFEJEME9R","pulled":"2026-10-06T18:11:23.927Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":195.0},{"extended_mm":197.0},{"extended_mm":196.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"flat","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M4WR46SZCZSCWDC48RRYVEP9', '01M4WR46SZCZSCWDC48RRYVEP9', 35, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:23:10.399Z","note":"class of twelve, number 1","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":109.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WR91TYEG93FDW3RKS6VMHX', '01M4WR91TYEG93FDW3RKS6VMHX', 36, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:25:49.15Z","note":"class of twelve, number 2","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":107.0},{"extended_mm":108.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WRG2D1BHT39JQB2S2ZS528', '01M4WRG2D1BHT39JQB2S2ZS528', 37, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:29:39.105Z","note":"class of twelve, number 3","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":109.0},{"extended_mm":109.0},{"extended_mm":110.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WRNEJ0BE90AXYK93ZTABB1', '01M4WRNEJ0BE90AXYK93ZTABB1', 38, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:32:35.392Z","note":"class of twelve, number 4","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":108.0},{"extended_mm":107.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M6H64C7P4VSWQ8ZK2M6TBN0D', '01M2K1HPAQZE5FYWP4DQ58ZFHN', 59, '{"kind":"fabric-changed","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","washed":true}');
INSERT INTO tenter.entry VALUES (1, '01M4WRSE6DJFXNCXFAQSZH6G05', '01M4WRSE6DJFXNCXFAQSZH6G05', 39, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:34:46.093Z","note":"class of twelve, number 5","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":107.0},{"extended_mm":107.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WRYXN7QS209GW32EM4AZVM', '01M4WRYXN7QS209GW32EM4AZVM', 40, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:37:45.767Z","note":"class of twelve, number 6","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":109.0},{"extended_mm":108.0},{"extended_mm":109.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WS3DV37HRV69Z5DRS9FJB9', '01M4WS3DV37HRV69Z5DRS9FJB9', 41, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:40:13.411Z","note":"class of twelve, number 7","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":110.0},{"extended_mm":109.0},{"extended_mm":109.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WS87Y34K46FQCHSY6T50CK', '01M4WS87Y34K46FQCHSY6T50CK', 42, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:42:51.203Z","note":"class of twelve, number 8","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":107.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WSCEBK6WN95PD8GKV6M4H3', '01M4WSCEBK6WN95PD8GKV6M4H3', 43, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:45:08.851Z","note":"class of twelve, number 9","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":107.0},{"extended_mm":108.0},{"extended_mm":107.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WSK76J1C1NPXQNH6GM2TKH', '01M4WSK76J1C1NPXQNH6GM2TKH', 44, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:48:50.898Z","note":"class of twelve, number 10","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":109.0},{"extended_mm":110.0},{"extended_mm":109.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WSSNP5K0JNX79SJ5XVFYK9', '01M4WSSNP5K0JNX79SJ5XVFYK9', 45, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:52:22.341Z","note":"class of twelve, number 11","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":109.0},{"extended_mm":109.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M4WSYSYYRDQY537KM752H6ZE', '01M4WSYSYYRDQY537KM752H6ZE', 46, '{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:55:10.558Z","note":"class of twelve, number 12","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":109.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M5D50H4P8R7S03TKJ23N0179', '01M5D50H4P8R7S03TKJ23N0179', 47, '{"kind":"pattern-added","name":"Choir trousers","note":"view A with a fly, view B to pull on"}');
INSERT INTO tenter.entry VALUES (1, '01M5D53MG3JEABNK7XH89JHN4X', '01M5D53MG3JEABNK7XH89JHN4X', 48, '{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"A","name":"main","demand":{"crosswise":{"least":{"percent":5.0},"most":{"percent":15.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"cloth":{"length_mm":2200.0,"width_mm":1400.0},"note":"slight stretch, about 5 %, crosswise"}');
INSERT INTO tenter.entry VALUES (1, '01M5D56ARCZ0TB2KZ2Z77PMGZC', '01M5D56ARCZ0TB2KZ2Z77PMGZC', 49, '{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"A","name":"waistband","demand":{"crosswise":{"least":{"percent":15.0},"most":{"percent":40.0}},"growth_most":{"percent":5.0}},"constructions":["woven","knit"],"cloth":{"length_mm":300.0,"width_mm":1400.0},"note":"gives more than the legs, so that one can sit"}');
INSERT INTO tenter.entry VALUES (1, '01M5D58WSW71QBC35CVHGW9PTE', '01M5D58WSW71QBC35CVHGW9PTE', 50, '{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"A","name":"pocket bags","demand":{"crosswise":{"most":{"percent":3.0}}},"constructions":["woven"],"cloth":{"length_mm":400.0,"width_mm":900.0},"note":""}');
INSERT INTO tenter.entry VALUES (1, '01M5D5DS39NR20PAS3YSSM3KPR', '01M5D5DS39NR20PAS3YSSM3KPR', 51, '{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"B","name":"main","demand":{"crosswise":{"least":{"percent":20.0},"most":{"percent":60.0}},"growth_most":{"percent":5.0}},"constructions":["woven","knit"],"cloth":{"length_mm":2200.0,"width_mm":1400.0},"note":"real stretch, no opening"}');
INSERT INTO tenter.entry VALUES (1, '01M5D5HNN4JF7R2PKPF0GTY8ZB', '01M5D5HNN4JF7R2PKPF0GTY8ZB', 52, '{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"B","name":"waistband","demand":{"crosswise":{"least":{"percent":60.0}},"growth_most":{"percent":10.0}},"constructions":["knit"],"cloth":{"length_mm":250.0,"width_mm":700.0},"note":""}');
INSERT INTO tenter.entry VALUES (1, '01M5D5NA8ES4Y6XHSBVFZ5JKMV', '01M5D5NA8ES4Y6XHSBVFZ5JKMV', 53, '{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"B","name":"elastic","demand":{"lengthwise":{"least":{"percent":60.0}},"growth_most":{"percent":5.0}},"constructions":["other"],"cloth":{"length_mm":800.0,"width_mm":35.0},"note":"drawn into the waistband"}');
INSERT INTO tenter.entry VALUES (1, '01M5D5TW7CSCKRF8THN8PEZ56P', '01M5D5TW7CSCKRF8THN8PEZ56P', 54, '{"kind":"pattern-added","name":"Play coat","note":"long coat for the school play, lined"}');
INSERT INTO tenter.entry VALUES (1, '01M5D5WEVQ4AMFZ6Z39KEVB1G3', '01M5D5WEVQ4AMFZ6Z39KEVB1G3', 55, '{"kind":"role-added","pattern":"01M5D5TW7CSCKRF8THN8PEZ56P","view":"-","name":"main","demand":{"crosswise":{"most":{"percent":6.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"cloth":{"length_mm":3200.0,"width_mm":1400.0},"note":"keeps its shape under the lamps"}');
INSERT INTO tenter.entry VALUES (1, '01M5D5ZBH6TSBXVW93KNRG7TP6', '01M5D5ZBH6TSBXVW93KNRG7TP6', 56, '{"kind":"role-added","pattern":"01M5D5TW7CSCKRF8THN8PEZ56P","view":"-","name":"lining","demand":{"lengthwise":{"least":{"percent":2.0}},"crosswise":{"least":{"percent":5.0}},"growth_most":{"percent":3.0}},"constructions":["woven","knit"],"cloth":{"length_mm":2400.0,"width_mm":1400.0},"note":"must give at least as the coat gives"}');
INSERT INTO tenter.entry VALUES (1, '01M5D66HV6AGMBSHAWECQ1QQDE', '01M5D66HV6AGMBSHAWECQ1QQDE', 57, '{"kind":"role-added","pattern":"01M5D5TW7CSCKRF8THN8PEZ56P","view":"-","name":"interfacing","demand":{"lengthwise":{"most":{"percent":4.0}},"crosswise":{"most":{"percent":8.0}}},"constructions":["woven","other"],"cloth":{"length_mm":900.0,"width_mm":900.0},"note":""}');
INSERT INTO tenter.entry VALUES (1, '01M6H60H1NT99ETZ8NDJ3QX9ZT', '01M2K1HPAQZE5FYWP4DQ58ZFHN', 58, '{"kind":"fabric-cut","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","length_mm":600.0,"note":"a trial waistband"}');
INSERT INTO tenter.entry VALUES (1, '01M6H687DRJS7RS9PQ34YEW71B', '01M6H687DRJS7RS9PQ34YEW71B', 60, '{"kind":"test-stored","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","pulled":"2026-11-03T17:10:32.632Z","note":"after the second wash","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":143.0},{"extended_mm":142.0},{"extended_mm":143.0,"rests":[{"seconds":60,"recovered_mm":104.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M6H6A0WEFGDB9QPHZHV65WJ9', '01M2K286F1SAB3MNMYWH9ABN13', 61, '{"kind":"fabric-dropped","fabric":"01M2K286F1SAB3MNMYWH9ABN13","note":"mildew along the fold"}');
INSERT INTO tenter.entry VALUES (1, '01M7CPCWNZQRTBYGJDM9XH0Z0N', '01M7CPCWNZQRTBYGJDM9XH0Z0N', 62, '{"kind":"fabric-added","tag":6,"name":"Matinee gabardine","fibre":"viscose, polyester, elastane","construction":"woven","width_mm":1450.0,"mg_per_m2":220000,"place":"","note":"","shop":{"place":"the market hall","price":{"hundredths":1150,"per":"metre"}}}');
INSERT INTO tenter.entry VALUES (1, '01M7CPKE0CNEPQTDV5RFFDGZJ1', '01M7CPKE0CNEPQTDV5RFFDGZJ1', 63, '{"kind":"test-stored","fabric":"01M7CPCWNZQRTBYGJDM9XH0Z0N","pulled":"2026-11-14T09:35:46.7Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":216.0},{"extended_mm":217.0},{"extended_mm":216.0,"rests":[{"seconds":60,"recovered_mm":202.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M7CPNDZRMSAMSPRSMYA8N1YY', '01M7CPNDZRMSAMSPRSMYA8N1YY', 64, '{"kind":"fabric-added","tag":13,"name":"Encore double knit","fibre":"70 viscose 25 polyester 5 elastane","construction":"knit","width_mm":1500.0,"mg_per_m2":310000,"place":"","note":"","shop":{"place":"the market hall","price":{"hundredths":1490,"per":"metre"}}}');
INSERT INTO tenter.entry VALUES (1, '01M7CPV7EPQDKF07BT6ZJ0KFV1', '01M7CPV7EPQDKF07BT6ZJ0KFV1', 65, '{"kind":"test-stored","fabric":"01M7CPNDZRMSAMSPRSMYA8N1YY","pulled":"2026-11-14T09:40:02.134Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":133.0},{"extended_mm":135.0},{"extended_mm":134.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M7CQ4KERATKT65YG8ARQQKRT', '01M7CQ4KERATKT65YG8ARQQKRT', 66, '{"kind":"test-stored","fabric":"01M7CPNDZRMSAMSPRSMYA8N1YY","pulled":"2026-11-14T09:45:09.336Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":122.0},{"extended_mm":123.0},{"extended_mm":122.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO tenter.entry VALUES (1, '01M7N8HSS2B3JQS911XDVKNGD8', '01M7N8HSS2B3JQS911XDVKNGD8', 67, '{"kind":"fabric-added","tag":7,"name":"Hymnal lawn","fibre":"cotton, linen","construction":"woven","width_mm":1380.0,"length_mm":2400.0,"place":"shelf","note":"not pulled yet"}');
INSERT INTO tenter.entry VALUES (1, '01M7YS5PRAB4VZ6HQEB7305ZBC', '01M7YS5PRAB4VZ6HQEB7305ZBC', 68, '{"kind":"test-stored","tag":31,"pulled":"2026-11-21T10:07:02.41Z","device":12,"number":1,"test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":106.0},{"extended_mm":107.0},{"extended_mm":106.0}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.entry VALUES (1, '01M7YSBHGHBT37Z96R6H419K91', '01M7YSBHGHBT37Z96R6H419K91', 69, '{"kind":"test-stored","tag":32,"pulled":"2026-11-21T10:10:13.649Z","device":12,"number":2,"test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":124.0},{"extended_mm":125.0},{"extended_mm":124.0}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO tenter.fabric VALUES (1, '01M7N8HSS2B3JQS911XDVKNGD8', 7, 'Hymnal lawn', 'cotton, linen', 'woven', 2208000, 3840000, NULL, 'shelf', 'not pulled yet', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 0, 0);
INSERT INTO tenter.fabric VALUES (1, '01M2K0HR231DK01R1X5KSWJNW9', 1, 'Vestry twill', '97 cotton 3 elastane', 'woven', 2368000, 4960000, 235000, 'blue crate', 'soft, holds a crease', false, NULL, '{"after":491.0,"before":500.0,"division":1.0}', '{"after":497.0,"before":500.0,"division":1.0}', false, NULL, '{"colour":"","one_way":false}', 4, 0.21939197312108255);
INSERT INTO tenter.fabric VALUES (1, '01M2K0RHN24D3FR9ZD2ARGGXX9', 2, 'Choirstall suiting', 'wool, polyester, a little elastane', 'woven', 2400000, 4320000, 240000, 'blue crate', '', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 0, 0);
INSERT INTO tenter.fabric VALUES (1, '01M2K0YTA656KF29GEQHYNDATP', 3, 'Footlight drill', 'cotton', 'woven', 2320000, 7200000, 215000, 'under the bench', 'does not give', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 4, 0);
INSERT INTO tenter.fabric VALUES (1, '01M2K13RY8J66DCW638B3CSTCP', 4, 'Staircase corduroy', 'cotton, elastane', 'woven', 2272000, 4160000, 290000, 'shelf', 'fine wale; the pile runs up', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 4, 0.2489070345368244);
INSERT INTO tenter.fabric VALUES (1, '01M2K177BX012BK1ZQR769R9N8', 5, 'Practice sateen', 'cotton, elastane', 'woven', 2240000, 1440000, 190000, 'school cupboard', 'the class of twelve pulls this one', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 24, 7.051501418751176);
INSERT INTO tenter.fabric VALUES (1, '01M2K1DA8MY53GXJQR53HFF5AK', 8, 'Doorway rib', '95 cotton 5 elastane', 'knit', 1280000, 1120000, 260000, 'basket', '', true, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 2, 0.21500577544785351);
INSERT INTO tenter.fabric VALUES (1, '01M2K1FYWHW40MN7S9D1SZG3JJ', 9, 'Curtain jersey', '78 polyamide 22 elastane', 'knit', 2480000, 2560000, 230000, 'basket', '', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 4, 0.08757879121971088);
INSERT INTO tenter.fabric VALUES (1, '01M2K1HPAQZE5FYWP4DQ58ZFHN', 10, 'Prompter ponte', '65 viscose 30 polyamide 5 elastane', 'knit', 2480000, 3840000, 300000, 'basket', '', true, NULL, NULL, NULL, false, 1793725706486, '{"colour":"","one_way":false}', 6, 0.7725759296822986);
INSERT INTO tenter.fabric VALUES (1, '01M2K1RQFJB8YFKPGBYFM1D5N6', 12, 'Wings lining', 'polyester, knitted', 'knit', 2400000, 5600000, 75000, 'shelf', '', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 4, 0.2612024280800087);
INSERT INTO tenter.fabric VALUES (1, '01M2K1YV1JGXDH6QB3SW9974JC', 14, 'Stagehand interfacing', 'polyester, fusible web', 'other', 1440000, 4800000, 45000, 'shelf', 'not woven; one side melts', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 4, 0.3775175642174982);
INSERT INTO tenter.fabric VALUES (1, '01M2K22C5TECRJKTHTFEJEME9R', 15, 'Interval elastic', 'polyester, rubber', 'other', 56000, 12800000, NULL, 'tin', 'for pull-on waists', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 2, 0.060395253523861346);
INSERT INTO tenter.fabric VALUES (1, '01M2K286F1SAB3MNMYWH9ABN13', 16, 'Thunder ripstop', 'polyamide', 'woven', 2400000, 1920000, 60000, 'under the bench', 'from a stage flag', false, NULL, NULL, NULL, true, NULL, '{"colour":"","one_way":false}', 2, 0.12438970682480173);
INSERT INTO tenter.fabric VALUES (1, '01M492TANMNF3JN0S381Z9N4PX', 11, 'Gym hall jersey', 'polyamide, elastane; twenty years old', 'knit', 2240000, 2400000, NULL, 'attic', 'no spring left', false, NULL, NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 1, 0.1616515942194514);
INSERT INTO tenter.fabric VALUES (1, '01M7CPCWNZQRTBYGJDM9XH0Z0N', 6, 'Matinee gabardine', 'viscose, polyester, elastane', 'woven', 2320000, NULL, 220000, '', '', false, '{"place":"the market hall","price":{"hundredths":1150,"per":"metre"}}', NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 2, 0.14817627608900616);
INSERT INTO tenter.fabric VALUES (1, '01M7CPNDZRMSAMSPRSMYA8N1YY', 13, 'Encore double knit', '70 viscose 25 polyester 5 elastane', 'knit', 2400000, NULL, 310000, '', '', false, '{"place":"the market hall","price":{"hundredths":1490,"per":"metre"}}', NULL, NULL, false, NULL, '{"colour":"","one_way":false}', 4, 0.644236266645311);
INSERT INTO tenter.log OVERRIDING SYSTEM VALUE VALUES (1, 'main');
INSERT INTO tenter.pattern VALUES (1, '01M5D50H4P8R7S03TKJ23N0179', 'Choir trousers', 'view A with a fly, view B to pull on', false);
INSERT INTO tenter.pattern VALUES (1, '01M5D5TW7CSCKRF8THN8PEZ56P', 'Play coat', 'long coat for the school play, lined', false);
INSERT INTO tenter.role VALUES (1, '01M5D53MG3JEABNK7XH89JHN4X', '01M5D50H4P8R7S03TKJ23N0179', 'A', 'main', '{"cloth":{"length_mm":2200.0,"width_mm":1400.0},"constructions":["woven"],"demand":{"crosswise":{"least":{"percent":5.0},"most":{"percent":15.0}},"growth_most":{"percent":3.0}},"drapes":[],"finishes":[],"mass":{}}', 'slight stretch, about 5 %, crosswise', false);
INSERT INTO tenter.role VALUES (1, '01M5D56ARCZ0TB2KZ2Z77PMGZC', '01M5D50H4P8R7S03TKJ23N0179', 'A', 'waistband', '{"cloth":{"length_mm":300.0,"width_mm":1400.0},"constructions":["woven","knit"],"demand":{"crosswise":{"least":{"percent":15.0},"most":{"percent":40.0}},"growth_most":{"percent":5.0}},"drapes":[],"finishes":[],"mass":{}}', 'gives more than the legs, so that one can sit', false);
INSERT INTO tenter.role VALUES (1, '01M5D58WSW71QBC35CVHGW9PTE', '01M5D50H4P8R7S03TKJ23N0179', 'A', 'pocket bags', '{"cloth":{"length_mm":400.0,"width_mm":900.0},"constructions":["woven"],"demand":{"crosswise":{"most":{"percent":3.0}}},"drapes":[],"finishes":[],"mass":{}}', '', false);
INSERT INTO tenter.role VALUES (1, '01M5D5DS39NR20PAS3YSSM3KPR', '01M5D50H4P8R7S03TKJ23N0179', 'B', 'main', '{"cloth":{"length_mm":2200.0,"width_mm":1400.0},"constructions":["woven","knit"],"demand":{"crosswise":{"least":{"percent":20.0},"most":{"percent":60.0}},"growth_most":{"percent":5.0}},"drapes":[],"finishes":[],"mass":{}}', 'real stretch, no opening', false);
INSERT INTO tenter.role VALUES (1, '01M5D5HNN4JF7R2PKPF0GTY8ZB', '01M5D50H4P8R7S03TKJ23N0179', 'B', 'waistband', '{"cloth":{"length_mm":250.0,"width_mm":700.0},"constructions":["knit"],"demand":{"crosswise":{"least":{"percent":60.0}},"growth_most":{"percent":10.0}},"drapes":[],"finishes":[],"mass":{}}', '', false);
INSERT INTO tenter.role VALUES (1, '01M5D5NA8ES4Y6XHSBVFZ5JKMV', '01M5D50H4P8R7S03TKJ23N0179', 'B', 'elastic', '{"cloth":{"length_mm":800.0,"width_mm":35.0},"constructions":["other"],"demand":{"growth_most":{"percent":5.0},"lengthwise":{"least":{"percent":60.0}}},"drapes":[],"finishes":[],"mass":{}}', 'drawn into the waistband', false);
INSERT INTO tenter.role VALUES (1, '01M5D5WEVQ4AMFZ6Z39KEVB1G3', '01M5D5TW7CSCKRF8THN8PEZ56P', '-', 'main', '{"cloth":{"length_mm":3200.0,"width_mm":1400.0},"constructions":["woven"],"demand":{"crosswise":{"most":{"percent":6.0}},"growth_most":{"percent":3.0}},"drapes":[],"finishes":[],"mass":{}}', 'keeps its shape under the lamps', false);
INSERT INTO tenter.role VALUES (1, '01M5D5ZBH6TSBXVW93KNRG7TP6', '01M5D5TW7CSCKRF8THN8PEZ56P', '-', 'lining', '{"cloth":{"length_mm":2400.0,"width_mm":1400.0},"constructions":["woven","knit"],"demand":{"crosswise":{"least":{"percent":5.0}},"growth_most":{"percent":3.0},"lengthwise":{"least":{"percent":2.0}}},"drapes":[],"finishes":[],"mass":{}}', 'must give at least as the coat gives', false);
INSERT INTO tenter.role VALUES (1, '01M5D66HV6AGMBSHAWECQ1QQDE', '01M5D5TW7CSCKRF8THN8PEZ56P', '-', 'interfacing', '{"cloth":{"length_mm":900.0,"width_mm":900.0},"constructions":["woven","other"],"demand":{"crosswise":{"most":{"percent":8.0}},"lengthwise":{"most":{"percent":4.0}}},"drapes":[],"finishes":[],"mass":{}}', '', false);
INSERT INTO tenter.test VALUES (1, '01M351NQDJ4VGGPGAJS16HVNYY', '01M2K1FYWHW40MN7S9D1SZG3JJ', NULL, 'crosswise', 1790097153458, false, NULL, NULL, '', '\x01c00c640100010101000347484702023c0602880e04000001030080fc047f', 71.33333587646484, 2, 2, 0.029339708160297087, false);
INSERT INTO tenter.test VALUES (1, '01M351V57TRY0R8P1J1H4BMADH', '01M2K1FYWHW40MN7S9D1SZG3JJ', NULL, 'lengthwise', 1790097331450, false, NULL, NULL, '', '\x01c00c640100000101000331323202023c0602880e04000001030071dfb663', 49.66666793823242, 2, 2, 0.05823908305941378, false);
INSERT INTO tenter.test VALUES (1, '01M35271X3CWWQN8EAM1KDWBMP', '01M2K1HPAQZE5FYWP4DQ58ZFHN', NULL, 'crosswise', 1790097721251, false, NULL, NULL, '', '\x00c00c640100010101000338363701023c0ae4c4683b', 55, 5, 2, 0.17652136890029627, false);
INSERT INTO tenter.test VALUES (1, '01M352KNWAA453BAM519PQNWHK', '01M2K1HPAQZE5FYWP4DQ58ZFHN', NULL, 'lengthwise', 1790098134922, false, NULL, NULL, '', '\x00c00c64010000010100031e1f1d01023c065dabc4ae', 30, 3, 2, 0.519137249559248, false);
INSERT INTO tenter.test VALUES (1, '01M3Q4D5TZ3YG2W9KQMVCT7KMY', '01M2K0HR231DK01R1X5KSWJNW9', NULL, 'crosswise', 1790703998815, false, NULL, NULL, '', '\x01c00cfa010100010101000315161502023c0402880e02000001030007ad16c2', 8.533333778381348, 0.4000000059604645, 2, 0.09266326858831682, false);
INSERT INTO tenter.test VALUES (1, '01M3Q4MWRJMGV7VJRP3BC1TEHS', '01M2K0HR231DK01R1X5KSWJNW9', NULL, 'lengthwise', 1790704251666, false, NULL, NULL, '', '\x01c00cfa010100000101000302030202023c0002880e0000000103006b5eab76', 0.9333333373069763, 0, 2, 0.12672870453276575, false);
INSERT INTO tenter.test VALUES (1, '01M3Q4ZNNZ2E5Y04G3H2YT83FN', '01M2K0RHN24D3FR9ZD2ARGGXX9', NULL, 'crosswise', 1790704604863, false, NULL, NULL, 'in the break, one pull', '\x00c00c64010001010100010601003c02498b9342', 6, 1, 0, 0, false);
INSERT INTO tenter.test VALUES (1, '01M3Q5ARB1XWP9G1KP07JKFTQA', '01M2K0YTA656KF29GEQHYNDATP', NULL, 'crosswise', 1790704968033, false, NULL, NULL, '', '\x01c00cfa010100010101000302020202023c0002880e0000000103001d068a50', 0.800000011920929, 0, 2, 0, false);
INSERT INTO tenter.test VALUES (1, '01M3Q5P21ZERA1QZ12X9YEZNE5', '01M2K0YTA656KF29GEQHYNDATP', NULL, 'lengthwise', 1790705338431, false, NULL, NULL, '', '\x01c00cfa010100000101000301010102023c0002880e000000010300d37e848b', 0.4000000059604645, 0, 2, 0, false);
INSERT INTO tenter.test VALUES (1, '01M3Q7PMYDD7ZYXFE5GB0WMX3A', '01M2K13RY8J66DCW638B3CSTCP', NULL, 'crosswise', 1790707454925, false, NULL, NULL, '', '\x01c00cc801010001010100032d2e2d02023c0c02880e080000010300026caf11', 22.66666603088379, 2, 2, 0.05468778521904301, false);
INSERT INTO tenter.test VALUES (1, '01M3Q7WQA76W1QVGQQY7FFR4A0', '01M2K13RY8J66DCW638B3CSTCP', NULL, 'lengthwise', 1790707653959, false, NULL, NULL, '', '\x01c00cc8010100000101000304050402023c0002880e00000001030024e75d87', 2.1666667461395264, 0, 2, 0.19421924931778137, false);
INSERT INTO tenter.test VALUES (1, '01M493155XNVYWWKQNCDVW7M0D', '01M492TANMNF3JN0S381Z9N4PX', NULL, 'crosswise', 1791306536125, false, NULL, NULL, '', '\x00c00c64010001010100023a3c01013c3e3e330ad2', 59, 31, 1, 0.1616515942194514, false);
INSERT INTO tenter.test VALUES (1, '01M4950PDGCWZDHED7KS1KC3CB', '01M2K1RQFJB8YFKPGBYFM1D5N6', NULL, 'crosswise', 1791308618160, false, NULL, NULL, '', '\x01c00cc8010100010101000318191802023c0402880e02000001030077137150', 12.166666984558105, 0.5, 2, 0.11302615199100254, false);
INSERT INTO tenter.test VALUES (1, '01M495B9MJMAP807N3JQSGC2DK', '01M2K1RQFJB8YFKPGBYFM1D5N6', NULL, 'lengthwise', 1791308965522, false, NULL, NULL, '', '\x01c00cc8010100000101000310111002023c0402880e02000001030017dd6840', 8.166666984558105, 0.5, 2, 0.14817627608900616, false);
INSERT INTO tenter.test VALUES (1, '01M495MYT72VFG48W7GGBCPTQ4', '01M2K1DA8MY53GXJQR53HFF5AK', NULL, 'crosswise', 1791309282119, false, NULL, NULL, '', '\x01c00c64010001010100034e514f02023c0a02880e080000010300bd44c8ce', 79.33333587646484, 4, 2, 0.21500577544785351, false);
INSERT INTO tenter.test VALUES (1, '01M495VQFC7N54CNN14P63FT3P', '01M2K286F1SAB3MNMYWH9ABN13', NULL, 'crosswise', 1791309503980, false, NULL, NULL, '', '\x01c00cfa010100010101000305050602023c0202880e00000001030054ae2b2b', 2.133333444595337, 0, 2, 0.12438970682480173, false);
INSERT INTO tenter.test VALUES (1, '01M49673A32DXZ9G5GMY1PJEDH', '01M2K1YV1JGXDH6QB3SW9974JC', NULL, 'crosswise', 1791309876547, false, NULL, NULL, '', '\x01c00cc8010100010101000309080902023c0402880e020000010300c5251a1e', 4.333333492279053, 0.5, 2, 0.18141455344542448, false);
INSERT INTO tenter.test VALUES (1, '01M496EVCP1ZXY65KTMNR9C7GP', '01M2K1YV1JGXDH6QB3SW9974JC', NULL, 'lengthwise', 1791310130582, false, NULL, NULL, '', '\x01c00cc8010100000101000303030402023c0002880e000000010300a3cb5e58', 1.6666666269302368, 0, 2, 0.19610301077207373, false);
INSERT INTO tenter.test VALUES (1, '01M496KH4QNNE4HM3S6SVM8XTM', '01M2K22C5TECRJKTHTFEJEME9R', NULL, 'lengthwise', 1791310283927, false, NULL, NULL, '', '\x01c00c64010000000100035f616002023c0202880e020000010300075d2199', 96, 1, 2, 0.060395253523861346, false);
INSERT INTO tenter.test VALUES (1, '01M4WR46SZCZSCWDC48RRYVEP9', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791966190399, false, NULL, NULL, 'class of twelve, number 1', '\x00c00c640100010101000308090802023c0202880e02fd209739', 8.333333015441895, 1, 2, 0.5865378954491508, false);
INSERT INTO tenter.test VALUES (1, '01M4WR91TYEG93FDW3RKS6VMHX', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791966349150, false, NULL, NULL, 'class of twelve, number 2', '\x00c00c640100010101000307080802023c0202880e0205bfad45', 7.666666507720947, 1, 2, 0.6112066770878067, false);
INSERT INTO tenter.test VALUES (1, '01M4WRG2D1BHT39JQB2S2ZS528', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791966579105, false, NULL, NULL, 'class of twelve, number 3', '\x00c00c640100010101000309090a02023c0402880e021b22af59', 9.333333015441895, 1, 2, 0.5497855447676732, false);
INSERT INTO tenter.test VALUES (1, '01M4WRNEJ0BE90AXYK93ZTABB1', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791966755392, false, NULL, NULL, 'class of twelve, number 4', '\x00c00c640100010101000308080702023c0202880e021284ec09', 7.666666507720947, 1, 2, 0.6112066770878067, false);
INSERT INTO tenter.test VALUES (1, '01M4WRSE6DJFXNCXFAQSZH6G05', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791966886093, false, NULL, NULL, 'class of twelve, number 5', '\x00c00c640100010101000307070802023c0202880e0288e4a6b4', 7.333333492279053, 1, 2, 0.6234993858737966, false);
INSERT INTO tenter.test VALUES (1, '01M4WRYXN7QS209GW32EM4AZVM', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791967065767, false, NULL, NULL, 'class of twelve, number 6', '\x00c00c640100010101000309080902023c0202880e024080a000', 8.666666984558105, 1, 2, 0.5742250952694207, false);
INSERT INTO tenter.test VALUES (1, '01M4WS3DV37HRV69Z5DRS9FJB9', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791967213411, false, NULL, NULL, 'class of twelve, number 7', '\x00c00c64010001010100030a090902023c0402880e02df78c0f9', 9.333333015441895, 1, 2, 0.5497855447676732, false);
INSERT INTO tenter.test VALUES (1, '01M4WS87Y34K46FQCHSY6T50CK', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791967371203, false, NULL, NULL, 'class of twelve, number 8', '\x00c00c640100010101000308070802023c0202880e024e105e27', 7.666666507720947, 1, 2, 0.6112066770878067, false);
INSERT INTO tenter.test VALUES (1, '01M4WSCEBK6WN95PD8GKV6M4H3', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791967508851, false, NULL, NULL, 'class of twelve, number 9', '\x00c00c640100010101000307080702023c0202880e02d470149a', 7.333333492279053, 1, 2, 0.6234993858737966, false);
INSERT INTO tenter.test VALUES (1, '01M4WSK76J1C1NPXQNH6GM2TKH', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791967730898, false, NULL, NULL, 'class of twelve, number 10', '\x00c00c6401000101010003090a0902023c0402880e02dda5158b', 9.333333015441895, 1, 2, 0.5497855447676732, false);
INSERT INTO tenter.test VALUES (1, '01M4WSSNP5K0JNX79SJ5XVFYK9', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791967942341, false, NULL, NULL, 'class of twelve, number 11', '\x00c00c640100010101000308090902023c0202880e02be34ec2e', 8.666666984558105, 1, 2, 0.5742250952694207, false);
INSERT INTO tenter.test VALUES (1, '01M4WSYSYYRDQY537KM752H6ZE', '01M2K177BX012BK1ZQR769R9N8', NULL, 'crosswise', 1791968110558, false, NULL, NULL, 'class of twelve, number 12', '\x00c00c640100010101000308090802023c0202880e02fd209739', 8.333333015441895, 1, 2, 0.5865378954491508, false);
INSERT INTO tenter.test VALUES (1, '01M6H687DRJS7RS9PQ34YEW71B', '01M2K1HPAQZE5FYWP4DQ58ZFHN', NULL, 'crosswise', 1793725832632, false, NULL, NULL, 'after the second wash', '\x00c00c64010001010100032b2a2b01023c08f89b5452', 42.66666793823242, 4, 2, 0.07691731122275437, false);
INSERT INTO tenter.test VALUES (1, '01M7CPKE0CNEPQTDV5RFFDGZJ1', '01M7CPCWNZQRTBYGJDM9XH0Z0N', NULL, 'crosswise', 1794648946700, false, NULL, NULL, '', '\x00c00cc8010100010101000310111001023c04eda2e645', 8.166666984558105, 1, 2, 0.14817627608900616, false);
INSERT INTO tenter.test VALUES (1, '01M7CPV7EPQDKF07BT6ZJ0KFV1', '01M7CPNDZRMSAMSPRSMYA8N1YY', NULL, 'crosswise', 1794649202134, false, NULL, NULL, '', '\x01c00c640100010101000321232202023c0402880e0200000103009a29cc53', 34, 1, 2, 0.42075434706931836, false);
INSERT INTO tenter.test VALUES (1, '01M7CQ4KERATKT65YG8ARQQKRT', '01M7CPNDZRMSAMSPRSMYA8N1YY', NULL, 'lengthwise', 1794649509336, false, NULL, NULL, '', '\x01c00c640100000101000316171602023c0402880e0200000103008f185634', 22.33333396911621, 1, 2, 0.22348191957599267, false);
INSERT INTO tenter.test VALUES (1, '01M7YS5PRAB4VZ6HQEB7305ZBC', NULL, 31, 'crosswise', 1795255622410, false, 12, 1, '', '\x00c00c640100010101000306070600dea10129', 6.333333492279053, NULL, 2, 0.6597678804556977, false);
INSERT INTO tenter.test VALUES (1, '01M7YSBHGHBT37Z96R6H419K91', NULL, 32, 'crosswise', 1795255813649, false, 12, 2, '', '\x00c00c640100010101000318191800d7303e5b', 24.33333396911621, NULL, 2, 0.19697653753850133, false);
SELECT pg_catalog.setval('tenter.log_number_seq', 1, true);
ALTER TABLE ONLY tenter.entry
    ADD CONSTRAINT entry_log_arrival_key UNIQUE (log, arrival);
ALTER TABLE ONLY tenter.entry
    ADD CONSTRAINT entry_pkey PRIMARY KEY (log, id);
ALTER TABLE ONLY tenter.fabric
    ADD CONSTRAINT fabric_pkey PRIMARY KEY (log, id);
ALTER TABLE ONLY tenter.log
    ADD CONSTRAINT log_name_key UNIQUE (name);
ALTER TABLE ONLY tenter.log
    ADD CONSTRAINT log_pkey PRIMARY KEY (number);
ALTER TABLE ONLY tenter.orphan
    ADD CONSTRAINT orphan_pkey PRIMARY KEY (log, subject);
ALTER TABLE ONLY tenter.pattern
    ADD CONSTRAINT pattern_pkey PRIMARY KEY (log, id);
ALTER TABLE ONLY tenter.role
    ADD CONSTRAINT role_pkey PRIMARY KEY (log, id);
ALTER TABLE ONLY tenter.test
    ADD CONSTRAINT test_pkey PRIMARY KEY (log, id);
CREATE INDEX entry_subject ON tenter.entry USING btree (log, subject, id);
CREATE INDEX fabric_tag ON tenter.fabric USING btree (log, tag);
CREATE INDEX orphan_waits_for ON tenter.orphan USING btree (log, waits_for);
CREATE INDEX role_pattern ON tenter.role USING btree (log, pattern, id);
CREATE INDEX test_fabric ON tenter.test USING btree (log, fabric, grain, pulled, id);
CREATE INDEX test_inbox ON tenter.test USING btree (log, pulled) WHERE (fabric IS NULL);
ALTER TABLE ONLY tenter.entry
    ADD CONSTRAINT entry_log_fkey FOREIGN KEY (log) REFERENCES tenter.log(number);
ALTER TABLE ONLY tenter.fabric
    ADD CONSTRAINT fabric_log_id_fkey FOREIGN KEY (log, id) REFERENCES tenter.entry(log, id);
ALTER TABLE ONLY tenter.pattern
    ADD CONSTRAINT pattern_log_id_fkey FOREIGN KEY (log, id) REFERENCES tenter.entry(log, id);
ALTER TABLE ONLY tenter.role
    ADD CONSTRAINT role_log_id_fkey FOREIGN KEY (log, id) REFERENCES tenter.entry(log, id);
ALTER TABLE ONLY tenter.role
    ADD CONSTRAINT role_log_pattern_fkey FOREIGN KEY (log, pattern) REFERENCES tenter.pattern(log, id);
ALTER TABLE ONLY tenter.test
    ADD CONSTRAINT test_log_fabric_fkey FOREIGN KEY (log, fabric) REFERENCES tenter.fabric(log, id);
ALTER TABLE ONLY tenter.test
    ADD CONSTRAINT test_log_id_fkey FOREIGN KEY (log, id) REFERENCES tenter.entry(log, id);
