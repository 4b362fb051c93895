PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE entry (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 26),
    subject TEXT NOT NULL CHECK (length(subject) = 26),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;
INSERT INTO entry VALUES('01M2K0HR231DK01R1X5KSWJNW9','01M2K0HR231DK01R1X5KSWJNW9','{"kind":"fabric-added","tag":1,"name":"Vestry twill","fibre":"97 cotton 3 elastane","construction":"woven","width_mm":1480.0,"length_mm":3100.0,"mg_per_m2":235000,"finish":"plain","drape":"crisp","purpose":"outer","colour":"navy","place":"blue crate","note":"soft, holds a crease"}');
INSERT INTO entry VALUES('01M2K0RHN24D3FR9ZD2ARGGXX9','01M2K0RHN24D3FR9ZD2ARGGXX9','{"kind":"fabric-added","tag":2,"name":"Choirstall suiting","fibre":"wool, polyester, a little elastane","construction":"woven","width_mm":1500.0,"length_mm":4200.0,"mg_per_m2":240000,"finish":"plain","drape":"crisp","purpose":"outer","colour":"charcoal","place":"blue crate","note":""}');
INSERT INTO entry VALUES('01M2K0YTA656KF29GEQHYNDATP','01M2K0YTA656KF29GEQHYNDATP','{"kind":"fabric-added","tag":3,"name":"Footlight drill","fibre":"cotton","construction":"woven","width_mm":1450.0,"length_mm":8500.0,"mg_per_m2":215000,"finish":"plain","drape":"stiff","purpose":"outer","colour":"black","place":"under the bench","note":"does not give"}');
INSERT INTO entry VALUES('01M2K13RY8J66DCW638B3CSTCP','01M2K13RY8J66DCW638B3CSTCP','{"kind":"fabric-added","tag":4,"name":"Staircase corduroy","fibre":"cotton, elastane","construction":"woven","width_mm":1420.0,"length_mm":2600.0,"mg_per_m2":290000,"finish":"pile","drape":"soft","purpose":"outer","one_way":true,"colour":"moss green","place":"shelf","note":"fine wale; the pile runs up"}');
INSERT INTO entry VALUES('01M2K177BX012BK1ZQR769R9N8','01M2K177BX012BK1ZQR769R9N8','{"kind":"fabric-added","tag":5,"name":"Practice sateen","fibre":"cotton, elastane","construction":"woven","width_mm":1400.0,"length_mm":900.0,"mg_per_m2":190000,"finish":"plain","drape":"soft","purpose":"outer","colour":"cream","place":"school cupboard","note":"the class of twelve pulls this one"}');
INSERT INTO entry VALUES('01M2K1DA8MY53GXJQR53HFF5AK','01M2K1DA8MY53GXJQR53HFF5AK','{"kind":"fabric-added","tag":8,"name":"Doorway rib","fibre":"95 cotton 5 elastane","construction":"knit","width_mm":800.0,"length_mm":700.0,"mg_per_m2":260000,"finish":"plain","drape":"soft","purpose":"rib","colour":"navy","place":"basket","note":"","washed":true}');
INSERT INTO entry VALUES('01M2K1FYWHW40MN7S9D1SZG3JJ','01M2K1FYWHW40MN7S9D1SZG3JJ','{"kind":"fabric-added","tag":9,"name":"Curtain jersey","fibre":"78 polyamide 22 elastane","construction":"knit","width_mm":1550.0,"length_mm":1600.0,"mg_per_m2":230000,"finish":"plain","drape":"soft","purpose":"outer","colour":"black","place":"basket","note":""}');
INSERT INTO entry VALUES('01M2K1HPAQZE5FYWP4DQ58ZFHN','01M2K1HPAQZE5FYWP4DQ58ZFHN','{"kind":"fabric-added","tag":10,"name":"Prompter ponte","fibre":"65 viscose 30 polyamide 5 elastane","construction":"knit","width_mm":1550.0,"length_mm":3000.0,"mg_per_m2":300000,"finish":"plain","drape":"soft","purpose":"outer","colour":"grey","place":"basket","note":"","washed":true}');
INSERT INTO entry VALUES('01M2K1RQFJB8YFKPGBYFM1D5N6','01M2K1RQFJB8YFKPGBYFM1D5N6','{"kind":"fabric-added","tag":12,"name":"Wings lining","fibre":"polyester, knitted","construction":"knit","width_mm":1500.0,"length_mm":6500.0,"mg_per_m2":75000,"finish":"plain","drape":"fluid","purpose":"lining","colour":"black","place":"shelf","note":""}');
INSERT INTO entry VALUES('01M2K1YV1JGXDH6QB3SW9974JC','01M2K1YV1JGXDH6QB3SW9974JC','{"kind":"fabric-added","tag":14,"name":"Stagehand interfacing","fibre":"polyester, fusible web","construction":"other","width_mm":900.0,"length_mm":3000.0,"mg_per_m2":45000,"finish":"fusible","drape":"soft","purpose":"interfacing","colour":"white","place":"shelf","note":"not woven; one side melts"}');
INSERT INTO entry VALUES('01M2K22C5TECRJKTHTFEJEME9R','01M2K22C5TECRJKTHTFEJEME9R','{"kind":"fabric-added","tag":15,"name":"Interval elastic","fibre":"polyester, rubber","construction":"other","width_mm":35.0,"length_mm":8000.0,"finish":"plain","colour":"white","place":"tin","note":"for pull-on waists"}');
INSERT INTO entry VALUES('01M2K286F1SAB3MNMYWH9ABN13','01M2K286F1SAB3MNMYWH9ABN13','{"kind":"fabric-added","tag":16,"name":"Thunder ripstop","fibre":"polyamide","construction":"woven","width_mm":1500.0,"length_mm":1200.0,"mg_per_m2":60000,"finish":"coated","drape":"crisp","purpose":"outer","colour":"yellow","place":"under the bench","note":"from a stage flag"}');
INSERT INTO entry VALUES('01M35129FV8KKM7ESRK2P5J5BH','01M2K0HR231DK01R1X5KSWJNW9','{"kind":"fabric-washed","fabric":"01M2K0HR231DK01R1X5KSWJNW9","grain":"lengthwise","before":500.0,"after":491.0,"division":1.0,"note":"40 °C, dried flat"}');
INSERT INTO entry VALUES('01M3516NYBG4827K1S1J9N9M73','01M2K0HR231DK01R1X5KSWJNW9','{"kind":"fabric-washed","fabric":"01M2K0HR231DK01R1X5KSWJNW9","grain":"crosswise","before":500.0,"after":497.0,"division":1.0,"note":"40 °C, dried flat"}');
INSERT INTO entry VALUES('01M351NQDJ4VGGPGAJS16HVNYY','01M351NQDJ4VGGPGAJS16HVNYY','{"kind":"test-stored","fabric":"01M2K1FYWHW40MN7S9D1SZG3JJ","pulled":"2026-09-22T17:12:33.458Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":171.0},{"extended_mm":172.0},{"extended_mm":171.0,"rests":[{"seconds":60,"recovered_mm":103.0},{"seconds":1800,"recovered_mm":102.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO entry VALUES('01M351V57TRY0R8P1J1H4BMADH','01M351V57TRY0R8P1J1H4BMADH','{"kind":"test-stored","fabric":"01M2K1FYWHW40MN7S9D1SZG3JJ","pulled":"2026-09-22T17:15:31.45Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":149.0},{"extended_mm":150.0},{"extended_mm":150.0,"rests":[{"seconds":60,"recovered_mm":103.0},{"seconds":1800,"recovered_mm":102.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO entry VALUES('01M35271X3CWWQN8EAM1KDWBMP','01M35271X3CWWQN8EAM1KDWBMP','{"kind":"test-stored","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","pulled":"2026-09-22T17:22:01.251Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":156.0},{"extended_mm":154.0},{"extended_mm":155.0,"rests":[{"seconds":60,"recovered_mm":105.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M352KNWAA453BAM519PQNWHK','01M352KNWAA453BAM519PQNWHK','{"kind":"test-stored","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","pulled":"2026-09-22T17:28:54.922Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":130.0},{"extended_mm":131.0},{"extended_mm":129.0,"rests":[{"seconds":60,"recovered_mm":103.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M3Q4D5TZ3YG2W9KQMVCT7KMY','01M3Q4D5TZ3YG2W9KQMVCT7KMY','{"kind":"test-stored","fabric":"01M2K0HR231DK01R1X5KSWJNW9","pulled":"2026-09-29T17:46:38.815Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":271.0},{"extended_mm":272.0},{"extended_mm":271.0,"rests":[{"seconds":60,"recovered_mm":252.0},{"seconds":1800,"recovered_mm":251.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO entry VALUES('01M3Q4MWRJMGV7VJRP3BC1TEHS','01M3Q4MWRJMGV7VJRP3BC1TEHS','{"kind":"test-stored","fabric":"01M2K0HR231DK01R1X5KSWJNW9","pulled":"2026-09-29T17:50:51.666Z","test":{"grain":"lengthwise","gauge_mm":250.0,"pulls":[{"extended_mm":252.0},{"extended_mm":253.0},{"extended_mm":252.0,"rests":[{"seconds":60,"recovered_mm":250.0},{"seconds":1800,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO entry VALUES('01M3Q4ZNNZ2E5Y04G3H2YT83FN','01M3Q4ZNNZ2E5Y04G3H2YT83FN','{"kind":"test-stored","fabric":"01M2K0RHN24D3FR9ZD2ARGGXX9","pulled":"2026-09-29T17:56:44.863Z","note":"in the break, one pull","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":106.0,"rests":[{"seconds":60,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M3Q5ARB1XWP9G1KP07JKFTQA','01M3Q5ARB1XWP9G1KP07JKFTQA','{"kind":"test-stored","fabric":"01M2K0YTA656KF29GEQHYNDATP","pulled":"2026-09-29T18:02:48.033Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":252.0},{"extended_mm":252.0},{"extended_mm":252.0,"rests":[{"seconds":60,"recovered_mm":250.0},{"seconds":1800,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO entry VALUES('01M3Q5P21ZERA1QZ12X9YEZNE5','01M3Q5P21ZERA1QZ12X9YEZNE5','{"kind":"test-stored","fabric":"01M2K0YTA656KF29GEQHYNDATP","pulled":"2026-09-29T18:08:58.431Z","test":{"grain":"lengthwise","gauge_mm":250.0,"pulls":[{"extended_mm":251.0},{"extended_mm":251.0},{"extended_mm":251.0,"rests":[{"seconds":60,"recovered_mm":250.0},{"seconds":1800,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO entry VALUES('01M3Q7PMYDD7ZYXFE5GB0WMX3A','01M3Q7PMYDD7ZYXFE5GB0WMX3A','{"kind":"test-stored","fabric":"01M2K13RY8J66DCW638B3CSTCP","pulled":"2026-09-29T18:44:14.925Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":245.0},{"extended_mm":246.0},{"extended_mm":245.0,"rests":[{"seconds":60,"recovered_mm":206.0},{"seconds":1800,"recovered_mm":204.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO entry VALUES('01M3Q7WQA76W1QVGQQY7FFR4A0','01M3Q7WQA76W1QVGQQY7FFR4A0','{"kind":"test-stored","fabric":"01M2K13RY8J66DCW638B3CSTCP","pulled":"2026-09-29T18:47:33.959Z","test":{"grain":"lengthwise","gauge_mm":200.0,"pulls":[{"extended_mm":204.0},{"extended_mm":205.0},{"extended_mm":204.0,"rests":[{"seconds":60,"recovered_mm":200.0},{"seconds":1800,"recovered_mm":200.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO entry VALUES('01M492TANMNF3JN0S381Z9N4PX','01M492TANMNF3JN0S381Z9N4PX','{"kind":"fabric-added","tag":11,"name":"Gym hall jersey","fibre":"polyamide, elastane; twenty years old","construction":"knit","width_mm":1400.0,"length_mm":1500.0,"finish":"plain","drape":"soft","purpose":"outer","colour":"faded blue","place":"attic","note":"no spring left"}');
INSERT INTO entry VALUES('01M493155XNVYWWKQNCDVW7M0D','01M493155XNVYWWKQNCDVW7M0D','{"kind":"test-stored","fabric":"01M492TANMNF3JN0S381Z9N4PX","pulled":"2026-10-06T17:08:56.125Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":158.0},{"extended_mm":160.0,"rests":[{"seconds":60,"recovered_mm":131.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4950PDGCWZDHED7KS1KC3CB','01M4950PDGCWZDHED7KS1KC3CB','{"kind":"test-stored","fabric":"01M2K1RQFJB8YFKPGBYFM1D5N6","pulled":"2026-10-06T17:43:38.16Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":224.0},{"extended_mm":225.0},{"extended_mm":224.0,"rests":[{"seconds":60,"recovered_mm":202.0},{"seconds":1800,"recovered_mm":201.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO entry VALUES('01M495B9MJMAP807N3JQSGC2DK','01M495B9MJMAP807N3JQSGC2DK','{"kind":"test-stored","fabric":"01M2K1RQFJB8YFKPGBYFM1D5N6","pulled":"2026-10-06T17:49:25.522Z","test":{"grain":"lengthwise","gauge_mm":200.0,"pulls":[{"extended_mm":216.0},{"extended_mm":217.0},{"extended_mm":216.0,"rests":[{"seconds":60,"recovered_mm":202.0},{"seconds":1800,"recovered_mm":201.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO entry VALUES('01M495MYT72VFG48W7GGBCPTQ4','01M495MYT72VFG48W7GGBCPTQ4','{"kind":"test-stored","fabric":"01M2K1DA8MY53GXJQR53HFF5AK","pulled":"2026-10-06T17:54:42.119Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":178.0},{"extended_mm":181.0},{"extended_mm":179.0,"rests":[{"seconds":60,"recovered_mm":105.0},{"seconds":1800,"recovered_mm":104.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO entry VALUES('01M495VQFC7N54CNN14P63FT3P','01M495VQFC7N54CNN14P63FT3P','{"kind":"test-stored","fabric":"01M2K286F1SAB3MNMYWH9ABN13","pulled":"2026-10-06T17:58:23.98Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":255.0},{"extended_mm":255.0},{"extended_mm":256.0,"rests":[{"seconds":60,"recovered_mm":251.0},{"seconds":1800,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":250.0}]}}');
INSERT INTO entry VALUES('01M49673A32DXZ9G5GMY1PJEDH','01M49673A32DXZ9G5GMY1PJEDH','{"kind":"test-stored","fabric":"01M2K1YV1JGXDH6QB3SW9974JC","pulled":"2026-10-06T18:04:36.547Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":209.0},{"extended_mm":208.0},{"extended_mm":209.0,"rests":[{"seconds":60,"recovered_mm":202.0},{"seconds":1800,"recovered_mm":201.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO entry VALUES('01M496EVCP1ZXY65KTMNR9C7GP','01M496EVCP1ZXY65KTMNR9C7GP','{"kind":"test-stored","fabric":"01M2K1YV1JGXDH6QB3SW9974JC","pulled":"2026-10-06T18:08:50.582Z","test":{"grain":"lengthwise","gauge_mm":200.0,"pulls":[{"extended_mm":203.0},{"extended_mm":203.0},{"extended_mm":204.0,"rests":[{"seconds":60,"recovered_mm":200.0},{"seconds":1800,"recovered_mm":200.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":200.0}]}}');
INSERT INTO entry VALUES('01M496KH4QNNE4HM3S6SVM8XTM','01M496KH4QNNE4HM3S6SVM8XTM','{"kind":"test-stored","fabric":"01M2K22C5TECRJKTHTFEJEME9R","pulled":"2026-10-06T18:11:23.927Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":195.0},{"extended_mm":197.0},{"extended_mm":196.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"flat","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO entry VALUES('01M4WR2D674S3W99YE7APQ2G6S','01M4WR2C6Z5K18QBKBJ2X3VVF2','{"kind":"person-named","person":"01M4WR2C6Z5K18QBKBJ2X3VVF2","name":"Ada"}');
INSERT INTO entry VALUES('01M4WR46SZCZSCWDC48RRYVEP9','01M4WR46SZCZSCWDC48RRYVEP9','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:23:10.399Z","pulled_by":"01M4WR2C6Z5K18QBKBJ2X3VVF2","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":109.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WR7876M88N9AX6QP10EEH9','01M4WR777YJX77PJ5SN77AX0MG','{"kind":"person-named","person":"01M4WR777YJX77PJ5SN77AX0MG","name":"Bram"}');
INSERT INTO entry VALUES('01M4WR91TYEG93FDW3RKS6VMHX','01M4WR91TYEG93FDW3RKS6VMHX','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:25:49.15Z","pulled_by":"01M4WR777YJX77PJ5SN77AX0MG","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":107.0},{"extended_mm":108.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WRE8S94VZWQX26A1DC2406','01M4WRE7T1GTVN3JBJQHDT25JF','{"kind":"person-named","person":"01M4WRE7T1GTVN3JBJQHDT25JF","name":"Cora"}');
INSERT INTO entry VALUES('01M4WRG2D1BHT39JQB2S2ZS528','01M4WRG2D1BHT39JQB2S2ZS528','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:29:39.105Z","pulled_by":"01M4WRE7T1GTVN3JBJQHDT25JF","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":109.0},{"extended_mm":109.0},{"extended_mm":110.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WRKMY8WKP4YZQY177PVT4E','01M4WRKKZ0DYJRQ6QQDBQJ9BHF','{"kind":"person-named","person":"01M4WRKKZ0DYJRQ6QQDBQJ9BHF","name":"Dario"}');
INSERT INTO entry VALUES('01M4WRNEJ0BE90AXYK93ZTABB1','01M4WRNEJ0BE90AXYK93ZTABB1','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:32:35.392Z","pulled_by":"01M4WRKKZ0DYJRQ6QQDBQJ9BHF","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":108.0},{"extended_mm":107.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WRQMJNPC6GYP2X9RY8PFJY','01M4WRQKKD8MT6XCYV6HRP38DD','{"kind":"person-named","person":"01M4WRQKKD8MT6XCYV6HRP38DD","name":"Edda"}');
INSERT INTO entry VALUES('01M4WRSE6DJFXNCXFAQSZH6G05','01M4WRSE6DJFXNCXFAQSZH6G05','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:34:46.093Z","pulled_by":"01M4WRQKKD8MT6XCYV6HRP38DD","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":107.0},{"extended_mm":107.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WRX41FN4QFK9MP8186YYVS','01M4WRX327PJ0Q50P1C3BJX45M','{"kind":"person-named","person":"01M4WRX327PJ0Q50P1C3BJX45M","name":"Finn"}');
INSERT INTO entry VALUES('01M4WRYXN7QS209GW32EM4AZVM','01M4WRYXN7QS209GW32EM4AZVM','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:37:45.767Z","pulled_by":"01M4WRX327PJ0Q50P1C3BJX45M","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":109.0},{"extended_mm":108.0},{"extended_mm":109.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WS1M7BCWKA0R05RPAPG0MG','01M4WS1K83M04WM3TPRP0D8WSP','{"kind":"person-named","person":"01M4WS1K83M04WM3TPRP0D8WSP","name":"Greta"}');
INSERT INTO entry VALUES('01M4WS3DV37HRV69Z5DRS9FJB9','01M4WS3DV37HRV69Z5DRS9FJB9','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:40:13.411Z","pulled_by":"01M4WS1K83M04WM3TPRP0D8WSP","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":110.0},{"extended_mm":109.0},{"extended_mm":109.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WS6EABJ6BPR1QWWK0S729D','01M4WS6DB38DXWJ8VN5N887PKT','{"kind":"person-named","person":"01M4WS6DB38DXWJ8VN5N887PKT","name":"Hugo"}');
INSERT INTO entry VALUES('01M4WS87Y34K46FQCHSY6T50CK','01M4WS87Y34K46FQCHSY6T50CK','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:42:51.203Z","pulled_by":"01M4WS6DB38DXWJ8VN5N887PKT","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":107.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WSAMQV6WSNBV7KFPSWZZJA','01M4WSAKRK2C5ZDM0YVWSPEM2H','{"kind":"person-named","person":"01M4WSAKRK2C5ZDM0YVWSPEM2H","name":"Ines"}');
INSERT INTO entry VALUES('01M4WSCEBK6WN95PD8GKV6M4H3','01M4WSCEBK6WN95PD8GKV6M4H3','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:45:08.851Z","pulled_by":"01M4WSAKRK2C5ZDM0YVWSPEM2H","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":107.0},{"extended_mm":108.0},{"extended_mm":107.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WSHDJTQAADN0T1481H2BSY','01M4WSHCKJ342P3FN6ZGE6BKYR','{"kind":"person-named","person":"01M4WSHCKJ342P3FN6ZGE6BKYR","name":"Jonas"}');
INSERT INTO entry VALUES('01M4WSK76J1C1NPXQNH6GM2TKH','01M4WSK76J1C1NPXQNH6GM2TKH','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:48:50.898Z","pulled_by":"01M4WSHCKJ342P3FN6ZGE6BKYR","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":109.0},{"extended_mm":110.0},{"extended_mm":109.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WSQW2D3VGEVP3015J57DX0','01M4WSQV358VJNXD6PNC64TGCQ','{"kind":"person-named","person":"01M4WSQV358VJNXD6PNC64TGCQ","name":"Kaja"}');
INSERT INTO entry VALUES('01M4WSSNP5K0JNX79SJ5XVFYK9','01M4WSSNP5K0JNX79SJ5XVFYK9','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:52:22.341Z","pulled_by":"01M4WSQV358VJNXD6PNC64TGCQ","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":109.0},{"extended_mm":109.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4WSX0B647J1E0WNFDGS506J','01M4WSWZBYZ1YPYEW6MKJTQYX1','{"kind":"person-named","person":"01M4WSWZBYZ1YPYEW6MKJTQYX1","name":"Leo"}');
INSERT INTO entry VALUES('01M4WSYSYYRDQY537KM752H6ZE','01M4WSYSYYRDQY537KM752H6ZE','{"kind":"test-stored","fabric":"01M2K177BX012BK1ZQR769R9N8","pulled":"2026-10-14T08:55:10.558Z","pulled_by":"01M4WSWZBYZ1YPYEW6MKJTQYX1","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":108.0},{"extended_mm":109.0},{"extended_mm":108.0,"rests":[{"seconds":60,"recovered_mm":101.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M5D50H4P8R7S03TKJ23N0179','01M5D50H4P8R7S03TKJ23N0179','{"kind":"pattern-added","name":"Choir trousers","note":"view A with a fly, view B to pull on"}');
INSERT INTO entry VALUES('01M5D53MG3JEABNK7XH89JHN4X','01M5D53MG3JEABNK7XH89JHN4X','{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"A","name":"main","demand":{"crosswise":{"least":{"percent":5.0},"most":{"percent":15.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"garment_kind":"trousers","mass":{"at_least_mg_per_m2":180000,"at_most_mg_per_m2":320000},"cloth":{"length_mm":2200.0,"width_mm":1400.0},"note":"slight stretch, about 5 %, crosswise"}');
INSERT INTO entry VALUES('01M5D56ARCZ0TB2KZ2Z77PMGZC','01M5D56ARCZ0TB2KZ2Z77PMGZC','{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"A","name":"waistband","demand":{"crosswise":{"least":{"percent":15.0},"most":{"percent":40.0}},"growth_most":{"percent":5.0}},"constructions":["woven","knit"],"garment_kind":"trousers","cloth":{"length_mm":300.0,"width_mm":1400.0},"note":"gives more than the legs, so that one can sit"}');
INSERT INTO entry VALUES('01M5D58WSW71QBC35CVHGW9PTE','01M5D58WSW71QBC35CVHGW9PTE','{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"A","name":"pocket bags","demand":{"crosswise":{"most":{"percent":3.0}}},"constructions":["woven"],"garment_kind":"trousers","cloth":{"length_mm":400.0,"width_mm":900.0},"note":""}');
INSERT INTO entry VALUES('01M5D5DS39NR20PAS3YSSM3KPR','01M5D5DS39NR20PAS3YSSM3KPR','{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"B","name":"main","demand":{"crosswise":{"least":{"percent":20.0},"most":{"percent":60.0}},"growth_most":{"percent":5.0}},"constructions":["woven","knit"],"garment_kind":"trousers","mass":{"at_least_mg_per_m2":180000,"at_most_mg_per_m2":350000},"cloth":{"length_mm":2200.0,"width_mm":1400.0},"note":"real stretch, no opening"}');
INSERT INTO entry VALUES('01M5D5HNN4JF7R2PKPF0GTY8ZB','01M5D5HNN4JF7R2PKPF0GTY8ZB','{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"B","name":"waistband","demand":{"crosswise":{"least":{"percent":60.0}},"growth_most":{"percent":10.0}},"constructions":["knit"],"garment_kind":"trousers","cloth":{"length_mm":250.0,"width_mm":700.0},"note":""}');
INSERT INTO entry VALUES('01M5D5NA8ES4Y6XHSBVFZ5JKMV','01M5D5NA8ES4Y6XHSBVFZ5JKMV','{"kind":"role-added","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"B","name":"elastic","demand":{"lengthwise":{"least":{"percent":60.0}},"growth_most":{"percent":5.0}},"constructions":["other"],"garment_kind":"trousers","cloth":{"length_mm":800.0,"width_mm":35.0},"note":"drawn into the waistband"}');
INSERT INTO entry VALUES('01M5D5TW7CSCKRF8THN8PEZ56P','01M5D5TW7CSCKRF8THN8PEZ56P','{"kind":"pattern-added","name":"Play coat","note":"long coat for the school play, lined"}');
INSERT INTO entry VALUES('01M5D5WEVQ4AMFZ6Z39KEVB1G3','01M5D5WEVQ4AMFZ6Z39KEVB1G3','{"kind":"role-added","pattern":"01M5D5TW7CSCKRF8THN8PEZ56P","view":"-","name":"main","demand":{"crosswise":{"most":{"percent":6.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"garment_kind":"lined-coat","mass":{"at_least_mg_per_m2":200000,"at_most_mg_per_m2":400000},"drapes":["crisp","stiff"],"cloth":{"length_mm":3200.0,"width_mm":1400.0},"note":"keeps its shape under the lamps"}');
INSERT INTO entry VALUES('01M5D5ZBH6TSBXVW93KNRG7TP6','01M5D5ZBH6TSBXVW93KNRG7TP6','{"kind":"role-added","pattern":"01M5D5TW7CSCKRF8THN8PEZ56P","view":"-","name":"lining","demand":{"lengthwise":{"least":{"percent":2.0}},"crosswise":{"least":{"percent":5.0}},"growth_most":{"percent":3.0}},"constructions":["woven","knit"],"garment_kind":"lined-coat","mass":{"at_most_mg_per_m2":120000},"purpose":"lining","cloth":{"length_mm":2400.0,"width_mm":1400.0},"note":"must give at least as the coat gives"}');
INSERT INTO entry VALUES('01M5D66HV6AGMBSHAWECQ1QQDE','01M5D66HV6AGMBSHAWECQ1QQDE','{"kind":"role-added","pattern":"01M5D5TW7CSCKRF8THN8PEZ56P","view":"-","name":"interfacing","demand":{"lengthwise":{"most":{"percent":4.0}},"crosswise":{"most":{"percent":8.0}}},"constructions":["woven","other"],"garment_kind":"lined-coat","purpose":"interfacing","cloth":{"length_mm":900.0,"width_mm":900.0},"note":""}');
INSERT INTO entry VALUES('01M5Z60HF6FR23R1AVZZEQKSGY','01M2K0RHN24D3FR9ZD2ARGGXX9','{"kind":"photo-added","fabric":"01M2K0RHN24D3FR9ZD2ARGGXX9","photo":"26170f85de33fd28ad80cb9c9ae639f1de261ac48a742a0899643c1533bb2d59","thumbnail":"a8943f0d58895dcfffb24ad1be7efa7138452925033f7e25da6bc9700cbb7dbc","width_px":320,"height_px":240,"colour":"#5e647c","note":"right side, by daylight"}');
INSERT INTO entry VALUES('01M6H60H1NT99ETZ8NDJ3QX9ZT','01M2K1HPAQZE5FYWP4DQ58ZFHN','{"kind":"fabric-cut","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","length_mm":600.0,"note":"a trial waistband"}');
INSERT INTO entry VALUES('01M6H63K90JN8SQVEHEZDSG36W','01M6H63K90JN8SQVEHEZDSG36W','{"kind":"garment-begun","number":1,"name":"Choir trousers A","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"A","uses":[{"role":"01M5D53MG3JEABNK7XH89JHN4X","fabric":"01M2K0RHN24D3FR9ZD2ARGGXX9"}],"for":"second tenor, third row","by":"2026-11-20"}');
INSERT INTO entry VALUES('01M6H64C7P4VSWQ8ZK2M6TBN0D','01M2K1HPAQZE5FYWP4DQ58ZFHN','{"kind":"fabric-changed","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","washed":true}');
INSERT INTO entry VALUES('01M6H687DRJS7RS9PQ34YEW71B','01M6H687DRJS7RS9PQ34YEW71B','{"kind":"test-stored","fabric":"01M2K1HPAQZE5FYWP4DQ58ZFHN","pulled":"2026-11-03T17:10:32.632Z","note":"after the second wash","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":143.0},{"extended_mm":142.0},{"extended_mm":143.0,"rests":[{"seconds":60,"recovered_mm":104.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M6H6A0WEFGDB9QPHZHV65WJ9','01M2K286F1SAB3MNMYWH9ABN13','{"kind":"fabric-dropped","fabric":"01M2K286F1SAB3MNMYWH9ABN13","note":"mildew along the fold"}');
INSERT INTO entry VALUES('01M6H96F66PXBBKSGB8VDW5NMT','01M2K0RHN24D3FR9ZD2ARGGXX9','{"kind":"fabric-cut-for","fabric":"01M2K0RHN24D3FR9ZD2ARGGXX9","length_mm":1500.0,"garment":"01M6H63K90JN8SQVEHEZDSG36W","role":"01M5D53MG3JEABNK7XH89JHN4X"}');
INSERT INTO entry VALUES('01M73C5249XQQT1SDVA8HT6J7R','01M6H63K90JN8SQVEHEZDSG36W','{"kind":"garment-done","garment":"01M6H63K90JN8SQVEHEZDSG36W"}');
INSERT INTO entry VALUES('01M73C5353ZJDXFAS9B8YM57VH','01M2K0RHN24D3FR9ZD2ARGGXX9','{"kind":"fabric-learned","fabric":"01M2K0RHN24D3FR9ZD2ARGGXX9","needle":"universal 80/12","stitch":"straight 2.5, triple at the crotch","pressure":"as usual","thread":"polyester 120","garment":"01M6H63K90JN8SQVEHEZDSG36W"}');
INSERT INTO entry VALUES('01M7CPCWNZQRTBYGJDM9XH0Z0N','01M7CPCWNZQRTBYGJDM9XH0Z0N','{"kind":"fabric-added","tag":6,"name":"Matinee gabardine","fibre":"viscose, polyester, elastane","construction":"woven","width_mm":1450.0,"mg_per_m2":220000,"finish":"plain","drape":"soft","purpose":"outer","colour":"dark red","place":"","note":"","shop":{"place":"the market hall","price":{"hundredths":1150,"per":"metre"}}}');
INSERT INTO entry VALUES('01M7CPKE0CNEPQTDV5RFFDGZJ1','01M7CPKE0CNEPQTDV5RFFDGZJ1','{"kind":"test-stored","fabric":"01M7CPCWNZQRTBYGJDM9XH0Z0N","pulled":"2026-11-14T09:35:46.7Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":216.0},{"extended_mm":217.0},{"extended_mm":216.0,"rests":[{"seconds":60,"recovered_mm":202.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M7CPNDZRMSAMSPRSMYA8N1YY','01M7CPNDZRMSAMSPRSMYA8N1YY','{"kind":"fabric-added","tag":13,"name":"Encore double knit","fibre":"70 viscose 25 polyester 5 elastane","construction":"knit","width_mm":1500.0,"mg_per_m2":310000,"finish":"plain","drape":"soft","purpose":"outer","colour":"bottle green","place":"","note":"","shop":{"place":"the market hall","price":{"hundredths":1490,"per":"metre"}}}');
INSERT INTO entry VALUES('01M7CPV7EPQDKF07BT6ZJ0KFV1','01M7CPV7EPQDKF07BT6ZJ0KFV1','{"kind":"test-stored","fabric":"01M7CPNDZRMSAMSPRSMYA8N1YY","pulled":"2026-11-14T09:40:02.134Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":133.0},{"extended_mm":135.0},{"extended_mm":134.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO entry VALUES('01M7CQ4KERATKT65YG8ARQQKRT','01M7CQ4KERATKT65YG8ARQQKRT','{"kind":"test-stored","fabric":"01M7CPNDZRMSAMSPRSMYA8N1YY","pulled":"2026-11-14T09:45:09.336Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":122.0},{"extended_mm":123.0},{"extended_mm":122.0,"rests":[{"seconds":60,"recovered_mm":102.0},{"seconds":1800,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true,"looks":[{"after_pulls":3,"gauge_mm":100.0}]}}');
INSERT INTO entry VALUES('01M7N8HSS2B3JQS911XDVKNGD8','01M7N8HSS2B3JQS911XDVKNGD8','{"kind":"fabric-added","tag":7,"name":"Hymnal lawn","fibre":"cotton, linen","construction":"woven","width_mm":1380.0,"length_mm":2400.0,"finish":"plain","drape":"soft","purpose":"outer","colour":"white","place":"shelf","note":"not pulled yet"}');
INSERT INTO entry VALUES('01M7N9G8924VVH1YFNFX1DTFS2','01M7N9G8924VVH1YFNFX1DTFS2','{"kind":"garment-begun","number":2,"name":"Play coat","pattern":"01M5D5TW7CSCKRF8THN8PEZ56P","view":"-","uses":[{"role":"01M5D5WEVQ4AMFZ6Z39KEVB1G3","fabric":"01M2K0YTA656KF29GEQHYNDATP"},{"role":"01M5D5ZBH6TSBXVW93KNRG7TP6","fabric":"01M2K1RQFJB8YFKPGBYFM1D5N6"}],"for":"the lamplighter","by":"2026-12-12","note":"two inside pockets"}');
INSERT INTO entry VALUES('01M7X9J6FFEJ57RFDXDPAT3EYM','01M2K0RHN24D3FR9ZD2ARGGXX9','{"kind":"fabric-learned","fabric":"01M2K0RHN24D3FR9ZD2ARGGXX9","wore":"knees bagged after the second half, flat again by morning","garment":"01M6H63K90JN8SQVEHEZDSG36W"}');
INSERT INTO entry VALUES('01M7YS5PRAB4VZ6HQEB7305ZBC','01M7YS5PRAB4VZ6HQEB7305ZBC','{"kind":"test-stored","tag":31,"pulled":"2026-11-21T10:07:02.41Z","device":12,"number":1,"test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":106.0},{"extended_mm":107.0},{"extended_mm":106.0}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M7YSBHGHBT37Z96R6H419K91','01M7YSBHGHBT37Z96R6H419K91','{"kind":"test-stored","tag":32,"pulled":"2026-11-21T10:10:13.649Z","device":12,"number":2,"test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":124.0},{"extended_mm":125.0},{"extended_mm":124.0}],"division_mm":1.0,"held":"folded","settled":true}}');
CREATE TABLE fabric (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    tag INTEGER NOT NULL,
    name TEXT NOT NULL,
    fibre TEXT NOT NULL,
    construction TEXT NOT NULL CHECK (construction IN ('woven', 'knit', 'other')),
    width INTEGER,
    length INTEGER CHECK (length >= 0),
    mg_per_m2 INTEGER,
    place TEXT NOT NULL,
    note TEXT NOT NULL,
    washed INTEGER NOT NULL CHECK (washed IN (0, 1)),
    shop TEXT CHECK (shop IS NULL OR json_valid(shop)),
    washed_lengthwise TEXT,
    washed_crosswise TEXT,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1)),
    -- The sums of its tests' hand_dof and hand_sum.
    last_washed INTEGER, more TEXT NOT NULL DEFAULT '{}') STRICT, WITHOUT ROWID;
INSERT INTO fabric VALUES('01M2K0HR231DK01R1X5KSWJNW9',1,'Vestry twill','97 cotton 3 elastane','woven',2368000,4960000,235000,'blue crate','soft, holds a crease',0,NULL,'{"before":500.0,"after":491.0,"division":1.0}','{"before":500.0,"after":497.0,"division":1.0}',0,NULL,'{"finish":"plain","drape":"crisp","purpose":"outer","one_way":false,"colour":"navy"}');
INSERT INTO fabric VALUES('01M2K0RHN24D3FR9ZD2ARGGXX9',2,'Choirstall suiting','wool, polyester, a little elastane','woven',2400000,4320000,240000,'blue crate','',0,NULL,NULL,NULL,0,NULL,'{"finish":"plain","drape":"crisp","purpose":"outer","one_way":false,"colour":"charcoal","photos":[{"id":"01M5Z60HF6FR23R1AVZZEQKSGY","photo":"26170f85de33fd28ad80cb9c9ae639f1de261ac48a742a0899643c1533bb2d59","thumbnail":"a8943f0d58895dcfffb24ad1be7efa7138452925033f7e25da6bc9700cbb7dbc","width_px":320,"height_px":240,"colour":"#5e647c","note":"right side, by daylight","dropped":false}],"lessons":[{"id":"01M73C5353ZJDXFAS9B8YM57VH","needle":"universal 80/12","stitch":"straight 2.5, triple at the crotch","pressure":"as usual","thread":"polyester 120","garment":"01M6H63K90JN8SQVEHEZDSG36W","dropped":false},{"id":"01M7X9J6FFEJ57RFDXDPAT3EYM","wore":"knees bagged after the second half, flat again by morning","garment":"01M6H63K90JN8SQVEHEZDSG36W","dropped":false}],"cuts":[{"id":"01M6H96F66PXBBKSGB8VDW5NMT","garment":"01M6H63K90JN8SQVEHEZDSG36W","role":"01M5D53MG3JEABNK7XH89JHN4X","length_mm":1500.0}]}');
INSERT INTO fabric VALUES('01M2K0YTA656KF29GEQHYNDATP',3,'Footlight drill','cotton','woven',2320000,13600000,215000,'under the bench','does not give',0,NULL,NULL,NULL,0,NULL,'{"finish":"plain","drape":"stiff","purpose":"outer","one_way":false,"colour":"black"}');
INSERT INTO fabric VALUES('01M2K13RY8J66DCW638B3CSTCP',4,'Staircase corduroy','cotton, elastane','woven',2272000,4160000,290000,'shelf','fine wale; the pile runs up',0,NULL,NULL,NULL,0,NULL,'{"finish":"pile","drape":"soft","purpose":"outer","one_way":true,"colour":"moss green"}');
INSERT INTO fabric VALUES('01M2K177BX012BK1ZQR769R9N8',5,'Practice sateen','cotton, elastane','woven',2240000,1440000,190000,'school cupboard','the class of twelve pulls this one',0,NULL,NULL,NULL,0,NULL,'{"finish":"plain","drape":"soft","purpose":"outer","one_way":false,"colour":"cream"}');
INSERT INTO fabric VALUES('01M2K1DA8MY53GXJQR53HFF5AK',8,'Doorway rib','95 cotton 5 elastane','knit',1280000,1120000,260000,'basket','',1,NULL,NULL,NULL,0,NULL,'{"finish":"plain","drape":"soft","purpose":"rib","one_way":false,"colour":"navy"}');
INSERT INTO fabric VALUES('01M2K1FYWHW40MN7S9D1SZG3JJ',9,'Curtain jersey','78 polyamide 22 elastane','knit',2480000,2560000,230000,'basket','',0,NULL,NULL,NULL,0,NULL,'{"finish":"plain","drape":"soft","purpose":"outer","one_way":false,"colour":"black"}');
INSERT INTO fabric VALUES('01M2K1HPAQZE5FYWP4DQ58ZFHN',10,'Prompter ponte','65 viscose 30 polyamide 5 elastane','knit',2480000,3840000,300000,'basket','',1,NULL,NULL,NULL,0,1793725706486,'{"finish":"plain","drape":"soft","purpose":"outer","one_way":false,"colour":"grey"}');
INSERT INTO fabric VALUES('01M2K1RQFJB8YFKPGBYFM1D5N6',12,'Wings lining','polyester, knitted','knit',2400000,10400000,75000,'shelf','',0,NULL,NULL,NULL,0,NULL,'{"finish":"plain","drape":"fluid","purpose":"lining","one_way":false,"colour":"black"}');
INSERT INTO fabric VALUES('01M2K1YV1JGXDH6QB3SW9974JC',14,'Stagehand interfacing','polyester, fusible web','other',1440000,4800000,45000,'shelf','not woven; one side melts',0,NULL,NULL,NULL,0,NULL,'{"finish":"fusible","drape":"soft","purpose":"interfacing","one_way":false,"colour":"white"}');
INSERT INTO fabric VALUES('01M2K22C5TECRJKTHTFEJEME9R',15,'Interval elastic','polyester, rubber','other',56000,12800000,NULL,'tin','for pull-on waists',0,NULL,NULL,NULL,0,NULL,'{"finish":"plain","one_way":false,"colour":"white"}');
INSERT INTO fabric VALUES('01M2K286F1SAB3MNMYWH9ABN13',16,'Thunder ripstop','polyamide','woven',2400000,1920000,60000,'under the bench','from a stage flag',0,NULL,NULL,NULL,1,NULL,'{"finish":"coated","drape":"crisp","purpose":"outer","one_way":false,"colour":"yellow"}');
INSERT INTO fabric VALUES('01M492TANMNF3JN0S381Z9N4PX',11,'Gym hall jersey','polyamide, elastane; twenty years old','knit',2240000,2400000,NULL,'attic','no spring left',0,NULL,NULL,NULL,0,NULL,'{"finish":"plain","drape":"soft","purpose":"outer","one_way":false,"colour":"faded blue"}');
INSERT INTO fabric VALUES('01M7CPCWNZQRTBYGJDM9XH0Z0N',6,'Matinee gabardine','viscose, polyester, elastane','woven',2320000,NULL,220000,'','',0,'{"place":"the market hall","price":{"hundredths":1150,"per":"metre"}}',NULL,NULL,0,NULL,'{"finish":"plain","drape":"soft","purpose":"outer","one_way":false,"colour":"dark red"}');
INSERT INTO fabric VALUES('01M7CPNDZRMSAMSPRSMYA8N1YY',13,'Encore double knit','70 viscose 25 polyester 5 elastane','knit',2400000,NULL,310000,'','',0,'{"place":"the market hall","price":{"hundredths":1490,"per":"metre"}}',NULL,NULL,0,NULL,'{"finish":"plain","drape":"soft","purpose":"outer","one_way":false,"colour":"bottle green"}');
INSERT INTO fabric VALUES('01M7N8HSS2B3JQS911XDVKNGD8',7,'Hymnal lawn','cotton, linen','woven',2208000,3840000,NULL,'shelf','not pulled yet',0,NULL,NULL,NULL,0,NULL,'{"finish":"plain","drape":"soft","purpose":"outer","one_way":false,"colour":"white"}');
CREATE TABLE test (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    fabric TEXT REFERENCES fabric (id),
    tag INTEGER,
    grain TEXT NOT NULL CHECK (grain IN ('lengthwise', 'crosswise', 'bias')),
    pulled INTEGER NOT NULL,
    clock_unset INTEGER NOT NULL CHECK (clock_unset IN (0, 1)),
    device INTEGER,
    number INTEGER,
    note TEXT NOT NULL,
    record BLOB NOT NULL,
    -- For lists and questions in plain SQL; answers are computed from the record.
    stretch_percent REAL NOT NULL,
    growth_percent REAL,
    -- Degrees of freedom and weighted squares of the pull-to-pull scatter.
    hand_dof REAL NOT NULL,
    hand_sum REAL NOT NULL,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1)), as_read TEXT NOT NULL DEFAULT '', pulled_by TEXT) STRICT, WITHOUT ROWID;
INSERT INTO test VALUES('01M351NQDJ4VGGPGAJS16HVNYY','01M2K1FYWHW40MN7S9D1SZG3JJ',NULL,'crosswise',1790097153458,0,NULL,NULL,'',X'01c00c640100010101000347484702023c0602880e04000001030080fc047f',71.33333587646484375,2.0,2.0,0.029339708160297087169,0,'',NULL);
INSERT INTO test VALUES('01M351V57TRY0R8P1J1H4BMADH','01M2K1FYWHW40MN7S9D1SZG3JJ',NULL,'lengthwise',1790097331450,0,NULL,NULL,'',X'01c00c640100000101000331323202023c0602880e04000001030071dfb663',49.666667938232421874,2.0,2.0,0.058239083059413783438,0,'',NULL);
INSERT INTO test VALUES('01M35271X3CWWQN8EAM1KDWBMP','01M2K1HPAQZE5FYWP4DQ58ZFHN',NULL,'crosswise',1790097721251,0,NULL,NULL,'',X'00c00c640100010101000338363701023c0ae4c4683b',55.0,5.0,2.0,0.17652136890029626603,0,'',NULL);
INSERT INTO test VALUES('01M352KNWAA453BAM519PQNWHK','01M2K1HPAQZE5FYWP4DQ58ZFHN',NULL,'lengthwise',1790098134922,0,NULL,NULL,'',X'00c00c64010000010100031e1f1d01023c065dabc4ae',30.0,3.0,2.0,0.51913724955924800408,0,'',NULL);
INSERT INTO test VALUES('01M3Q4D5TZ3YG2W9KQMVCT7KMY','01M2K0HR231DK01R1X5KSWJNW9',NULL,'crosswise',1790703998815,0,NULL,NULL,'',X'01c00cfa010100010101000315161502023c0402880e02000001030007ad16c2',8.5333337783813476562,0.40000000596046447753,2.0,0.092663268588316818896,0,'',NULL);
INSERT INTO test VALUES('01M3Q4MWRJMGV7VJRP3BC1TEHS','01M2K0HR231DK01R1X5KSWJNW9',NULL,'lengthwise',1790704251666,0,NULL,NULL,'',X'01c00cfa010100000101000302030202023c0002880e0000000103006b5eab76',0.93333333730697631835,0.0,2.0,0.12672870453276574576,0,'',NULL);
INSERT INTO test VALUES('01M3Q4ZNNZ2E5Y04G3H2YT83FN','01M2K0RHN24D3FR9ZD2ARGGXX9',NULL,'crosswise',1790704604863,0,NULL,NULL,'in the break, one pull',X'00c00c64010001010100010601003c02498b9342',6.0,1.0,0.0,0.0,0,'',NULL);
INSERT INTO test VALUES('01M3Q5ARB1XWP9G1KP07JKFTQA','01M2K0YTA656KF29GEQHYNDATP',NULL,'crosswise',1790704968033,0,NULL,NULL,'',X'01c00cfa010100010101000302020202023c0002880e0000000103001d068a50',0.80000001192092895507,0.0,2.0,0.0,0,'',NULL);
INSERT INTO test VALUES('01M3Q5P21ZERA1QZ12X9YEZNE5','01M2K0YTA656KF29GEQHYNDATP',NULL,'lengthwise',1790705338431,0,NULL,NULL,'',X'01c00cfa010100000101000301010102023c0002880e000000010300d37e848b',0.40000000596046447753,0.0,2.0,0.0,0,'',NULL);
INSERT INTO test VALUES('01M3Q7PMYDD7ZYXFE5GB0WMX3A','01M2K13RY8J66DCW638B3CSTCP',NULL,'crosswise',1790707454925,0,NULL,NULL,'',X'01c00cc801010001010100032d2e2d02023c0c02880e080000010300026caf11',22.666666030883789062,2.0,2.0,0.054687785219043008599,0,'',NULL);
INSERT INTO test VALUES('01M3Q7WQA76W1QVGQQY7FFR4A0','01M2K13RY8J66DCW638B3CSTCP',NULL,'lengthwise',1790707653959,0,NULL,NULL,'',X'01c00cc8010100000101000304050402023c0002880e00000001030024e75d87',2.1666667461395263671,0.0,2.0,0.19421924931778136724,0,'',NULL);
INSERT INTO test VALUES('01M493155XNVYWWKQNCDVW7M0D','01M492TANMNF3JN0S381Z9N4PX',NULL,'crosswise',1791306536125,0,NULL,NULL,'',X'00c00c64010001010100023a3c01013c3e3e330ad2',59.0,31.0,1.0,0.16165159421945141104,0,'',NULL);
INSERT INTO test VALUES('01M4950PDGCWZDHED7KS1KC3CB','01M2K1RQFJB8YFKPGBYFM1D5N6',NULL,'crosswise',1791308618160,0,NULL,NULL,'',X'01c00cc8010100010101000318191802023c0402880e02000001030077137150',12.166666984558105468,0.5,2.0,0.11302615199100253529,0,'',NULL);
INSERT INTO test VALUES('01M495B9MJMAP807N3JQSGC2DK','01M2K1RQFJB8YFKPGBYFM1D5N6',NULL,'lengthwise',1791308965522,0,NULL,NULL,'',X'01c00cc8010100000101000310111002023c0402880e02000001030017dd6840',8.1666669845581054687,0.5,2.0,0.1481762760890061592,0,'',NULL);
INSERT INTO test VALUES('01M495MYT72VFG48W7GGBCPTQ4','01M2K1DA8MY53GXJQR53HFF5AK',NULL,'crosswise',1791309282119,0,NULL,NULL,'',X'01c00c64010001010100034e514f02023c0a02880e080000010300bd44c8ce',79.333335876464843748,4.0,2.0,0.21500577544785351435,0,'',NULL);
INSERT INTO test VALUES('01M495VQFC7N54CNN14P63FT3P','01M2K286F1SAB3MNMYWH9ABN13',NULL,'crosswise',1791309503980,0,NULL,NULL,'',X'01c00cfa010100010101000305050602023c0202880e00000001030054ae2b2b',2.133333444595336914,0.0,2.0,0.12438970682480172957,0,'',NULL);
INSERT INTO test VALUES('01M49673A32DXZ9G5GMY1PJEDH','01M2K1YV1JGXDH6QB3SW9974JC',NULL,'crosswise',1791309876547,0,NULL,NULL,'',X'01c00cc8010100010101000309080902023c0402880e020000010300c5251a1e',4.3333334922790527343,0.5,2.0,0.18141455344542448124,0,'',NULL);
INSERT INTO test VALUES('01M496EVCP1ZXY65KTMNR9C7GP','01M2K1YV1JGXDH6QB3SW9974JC',NULL,'lengthwise',1791310130582,0,NULL,NULL,'',X'01c00cc8010100000101000303030402023c0002880e000000010300a3cb5e58',1.6666666269302368164,0.0,2.0,0.19610301077207373254,0,'',NULL);
INSERT INTO test VALUES('01M496KH4QNNE4HM3S6SVM8XTM','01M2K22C5TECRJKTHTFEJEME9R',NULL,'lengthwise',1791310283927,0,NULL,NULL,'',X'01c00c64010000000100035f616002023c0202880e020000010300075d2199',96.0,1.0,2.0,0.060395253523861346101,0,'',NULL);
INSERT INTO test VALUES('01M4WR46SZCZSCWDC48RRYVEP9','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791966190399,0,NULL,NULL,'',X'00c00c640100010101000308090802023c0202880e02fd209739',8.3333330154418945312,1.0,2.0,0.58653789544915080345,0,'','01M4WR2C6Z5K18QBKBJ2X3VVF2');
INSERT INTO test VALUES('01M4WR91TYEG93FDW3RKS6VMHX','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791966349150,0,NULL,NULL,'',X'00c00c640100010101000307080802023c0202880e0205bfad45',7.6666665077209472656,1.0,2.0,0.61120667708780673788,0,'','01M4WR777YJX77PJ5SN77AX0MG');
INSERT INTO test VALUES('01M4WRG2D1BHT39JQB2S2ZS528','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791966579105,0,NULL,NULL,'',X'00c00c640100010101000309090a02023c0402880e021b22af59',9.3333330154418945312,1.0,2.0,0.54978554476767316216,0,'','01M4WRE7T1GTVN3JBJQHDT25JF');
INSERT INTO test VALUES('01M4WRNEJ0BE90AXYK93ZTABB1','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791966755392,0,NULL,NULL,'',X'00c00c640100010101000308080702023c0202880e021284ec09',7.6666665077209472656,1.0,2.0,0.61120667708780673788,0,'','01M4WRKKZ0DYJRQ6QQDBQJ9BHF');
INSERT INTO test VALUES('01M4WRSE6DJFXNCXFAQSZH6G05','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791966886093,0,NULL,NULL,'',X'00c00c640100010101000307070802023c0202880e0288e4a6b4',7.3333334922790527343,1.0,2.0,0.6234993858737966077,0,'','01M4WRQKKD8MT6XCYV6HRP38DD');
INSERT INTO test VALUES('01M4WRYXN7QS209GW32EM4AZVM','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791967065767,0,NULL,NULL,'',X'00c00c640100010101000309080902023c0202880e024080a000',8.6666669845581054687,1.0,2.0,0.57422509526942067115,0,'','01M4WRX327PJ0Q50P1C3BJX45M');
INSERT INTO test VALUES('01M4WS3DV37HRV69Z5DRS9FJB9','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791967213411,0,NULL,NULL,'',X'00c00c64010001010100030a090902023c0402880e02df78c0f9',9.3333330154418945312,1.0,2.0,0.54978554476767316216,0,'','01M4WS1K83M04WM3TPRP0D8WSP');
INSERT INTO test VALUES('01M4WS87Y34K46FQCHSY6T50CK','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791967371203,0,NULL,NULL,'',X'00c00c640100010101000308070802023c0202880e024e105e27',7.6666665077209472656,1.0,2.0,0.61120667708780673788,0,'','01M4WS6DB38DXWJ8VN5N887PKT');
INSERT INTO test VALUES('01M4WSCEBK6WN95PD8GKV6M4H3','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791967508851,0,NULL,NULL,'',X'00c00c640100010101000307080702023c0202880e02d470149a',7.3333334922790527343,1.0,2.0,0.6234993858737966077,0,'','01M4WSAKRK2C5ZDM0YVWSPEM2H');
INSERT INTO test VALUES('01M4WSK76J1C1NPXQNH6GM2TKH','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791967730898,0,NULL,NULL,'',X'00c00c6401000101010003090a0902023c0402880e02dda5158b',9.3333330154418945312,1.0,2.0,0.54978554476767316216,0,'','01M4WSHCKJ342P3FN6ZGE6BKYR');
INSERT INTO test VALUES('01M4WSSNP5K0JNX79SJ5XVFYK9','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791967942341,0,NULL,NULL,'',X'00c00c640100010101000308090902023c0202880e02be34ec2e',8.6666669845581054687,1.0,2.0,0.57422509526942067115,0,'','01M4WSQV358VJNXD6PNC64TGCQ');
INSERT INTO test VALUES('01M4WSYSYYRDQY537KM752H6ZE','01M2K177BX012BK1ZQR769R9N8',NULL,'crosswise',1791968110558,0,NULL,NULL,'',X'00c00c640100010101000308090802023c0202880e02fd209739',8.3333330154418945312,1.0,2.0,0.58653789544915080345,0,'','01M4WSWZBYZ1YPYEW6MKJTQYX1');
INSERT INTO test VALUES('01M6H687DRJS7RS9PQ34YEW71B','01M2K1HPAQZE5FYWP4DQ58ZFHN',NULL,'crosswise',1793725832632,0,NULL,NULL,'after the second wash',X'00c00c64010001010100032b2a2b01023c08f89b5452',42.666667938232421875,4.0,2.0,0.076917311222754372601,0,'',NULL);
INSERT INTO test VALUES('01M7CPKE0CNEPQTDV5RFFDGZJ1','01M7CPCWNZQRTBYGJDM9XH0Z0N',NULL,'crosswise',1794648946700,0,NULL,NULL,'',X'00c00cc8010100010101000310111001023c04eda2e645',8.1666669845581054687,1.0,2.0,0.1481762760890061592,0,'',NULL);
INSERT INTO test VALUES('01M7CPV7EPQDKF07BT6ZJ0KFV1','01M7CPNDZRMSAMSPRSMYA8N1YY',NULL,'crosswise',1794649202134,0,NULL,NULL,'',X'01c00c640100010101000321232202023c0402880e0200000103009a29cc53',34.0,1.0,2.0,0.42075434706931835737,0,'',NULL);
INSERT INTO test VALUES('01M7CQ4KERATKT65YG8ARQQKRT','01M7CPNDZRMSAMSPRSMYA8N1YY',NULL,'lengthwise',1794649509336,0,NULL,NULL,'',X'01c00c640100000101000316171602023c0402880e0200000103008f185634',22.333333969116210937,1.0,2.0,0.22348191957599267132,0,'',NULL);
INSERT INTO test VALUES('01M7YS5PRAB4VZ6HQEB7305ZBC',NULL,31,'crosswise',1795255622410,0,12,1,'',X'00c00c640100010101000306070600dea10129',6.3333334922790527343,NULL,2.0,0.65976788045569767504,0,'',NULL);
INSERT INTO test VALUES('01M7YSBHGHBT37Z96R6H419K91',NULL,32,'crosswise',1795255813649,0,12,2,'',X'00c00c640100010101000318191800d7303e5b',24.333333969116210937,NULL,2.0,0.19697653753850133395,0,'',NULL);
CREATE TABLE pattern (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    name TEXT NOT NULL,
    note TEXT NOT NULL,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1))
) STRICT, WITHOUT ROWID;
INSERT INTO pattern VALUES('01M5D50H4P8R7S03TKJ23N0179','Choir trousers','view A with a fly, view B to pull on',0);
INSERT INTO pattern VALUES('01M5D5TW7CSCKRF8THN8PEZ56P','Play coat','long coat for the school play, lined',0);
CREATE TABLE role (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    pattern TEXT NOT NULL REFERENCES pattern (id),
    view TEXT NOT NULL,
    name TEXT NOT NULL,
    -- Demand, constructions and cloth as JSON.
    asks TEXT NOT NULL CHECK (json_valid(asks)),
    note TEXT NOT NULL,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1))
) STRICT, WITHOUT ROWID;
INSERT INTO role VALUES('01M5D53MG3JEABNK7XH89JHN4X','01M5D50H4P8R7S03TKJ23N0179','A','main','{"demand":{"crosswise":{"least":{"percent":5.0},"most":{"percent":15.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"kind":"trousers","mass":{"at_least_mg_per_m2":180000,"at_most_mg_per_m2":320000},"drapes":[],"finishes":[],"cloth":{"length_mm":2200.0,"width_mm":1400.0}}','slight stretch, about 5 %, crosswise',0);
INSERT INTO role VALUES('01M5D56ARCZ0TB2KZ2Z77PMGZC','01M5D50H4P8R7S03TKJ23N0179','A','waistband','{"demand":{"crosswise":{"least":{"percent":15.0},"most":{"percent":40.0}},"growth_most":{"percent":5.0}},"constructions":["woven","knit"],"kind":"trousers","mass":{},"drapes":[],"finishes":[],"cloth":{"length_mm":300.0,"width_mm":1400.0}}','gives more than the legs, so that one can sit',0);
INSERT INTO role VALUES('01M5D58WSW71QBC35CVHGW9PTE','01M5D50H4P8R7S03TKJ23N0179','A','pocket bags','{"demand":{"crosswise":{"most":{"percent":3.0}}},"constructions":["woven"],"kind":"trousers","mass":{},"drapes":[],"finishes":[],"cloth":{"length_mm":400.0,"width_mm":900.0}}','',0);
INSERT INTO role VALUES('01M5D5DS39NR20PAS3YSSM3KPR','01M5D50H4P8R7S03TKJ23N0179','B','main','{"demand":{"crosswise":{"least":{"percent":20.0},"most":{"percent":60.0}},"growth_most":{"percent":5.0}},"constructions":["woven","knit"],"kind":"trousers","mass":{"at_least_mg_per_m2":180000,"at_most_mg_per_m2":350000},"drapes":[],"finishes":[],"cloth":{"length_mm":2200.0,"width_mm":1400.0}}','real stretch, no opening',0);
INSERT INTO role VALUES('01M5D5HNN4JF7R2PKPF0GTY8ZB','01M5D50H4P8R7S03TKJ23N0179','B','waistband','{"demand":{"crosswise":{"least":{"percent":60.0}},"growth_most":{"percent":10.0}},"constructions":["knit"],"kind":"trousers","mass":{},"drapes":[],"finishes":[],"cloth":{"length_mm":250.0,"width_mm":700.0}}','',0);
INSERT INTO role VALUES('01M5D5NA8ES4Y6XHSBVFZ5JKMV','01M5D50H4P8R7S03TKJ23N0179','B','elastic','{"demand":{"lengthwise":{"least":{"percent":60.0}},"growth_most":{"percent":5.0}},"constructions":["other"],"kind":"trousers","mass":{},"drapes":[],"finishes":[],"cloth":{"length_mm":800.0,"width_mm":35.0}}','drawn into the waistband',0);
INSERT INTO role VALUES('01M5D5WEVQ4AMFZ6Z39KEVB1G3','01M5D5TW7CSCKRF8THN8PEZ56P','-','main','{"demand":{"crosswise":{"most":{"percent":6.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"kind":"lined-coat","mass":{"at_least_mg_per_m2":200000,"at_most_mg_per_m2":400000},"drapes":["crisp","stiff"],"finishes":[],"cloth":{"length_mm":3200.0,"width_mm":1400.0}}','keeps its shape under the lamps',0);
INSERT INTO role VALUES('01M5D5ZBH6TSBXVW93KNRG7TP6','01M5D5TW7CSCKRF8THN8PEZ56P','-','lining','{"demand":{"lengthwise":{"least":{"percent":2.0}},"crosswise":{"least":{"percent":5.0}},"growth_most":{"percent":3.0}},"constructions":["woven","knit"],"kind":"lined-coat","mass":{"at_most_mg_per_m2":120000},"drapes":[],"finishes":[],"purpose":"lining","cloth":{"length_mm":2400.0,"width_mm":1400.0}}','must give at least as the coat gives',0);
INSERT INTO role VALUES('01M5D66HV6AGMBSHAWECQ1QQDE','01M5D5TW7CSCKRF8THN8PEZ56P','-','interfacing','{"demand":{"lengthwise":{"most":{"percent":4.0}},"crosswise":{"most":{"percent":8.0}}},"constructions":["woven","other"],"kind":"lined-coat","mass":{},"drapes":[],"finishes":[],"purpose":"interfacing","cloth":{"length_mm":900.0,"width_mm":900.0}}','',0);
CREATE TABLE orphan (
    subject TEXT NOT NULL PRIMARY KEY,
    waits_for TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE draft (
    name TEXT NOT NULL PRIMARY KEY,
    text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO draft VALUES('desk','{"who":"01M4WR2C6Z5K18QBKBJ2X3VVF2"}');
CREATE TABLE arrival (
    number INTEGER NOT NULL PRIMARY KEY,
    entry TEXT NOT NULL REFERENCES entry (id)
) STRICT;
INSERT INTO arrival VALUES(1,'01M2K0HR231DK01R1X5KSWJNW9');
INSERT INTO arrival VALUES(2,'01M2K0RHN24D3FR9ZD2ARGGXX9');
INSERT INTO arrival VALUES(3,'01M2K0YTA656KF29GEQHYNDATP');
INSERT INTO arrival VALUES(4,'01M2K13RY8J66DCW638B3CSTCP');
INSERT INTO arrival VALUES(5,'01M2K177BX012BK1ZQR769R9N8');
INSERT INTO arrival VALUES(6,'01M2K1DA8MY53GXJQR53HFF5AK');
INSERT INTO arrival VALUES(7,'01M2K1FYWHW40MN7S9D1SZG3JJ');
INSERT INTO arrival VALUES(8,'01M2K1HPAQZE5FYWP4DQ58ZFHN');
INSERT INTO arrival VALUES(9,'01M2K1RQFJB8YFKPGBYFM1D5N6');
INSERT INTO arrival VALUES(10,'01M2K1YV1JGXDH6QB3SW9974JC');
INSERT INTO arrival VALUES(11,'01M2K22C5TECRJKTHTFEJEME9R');
INSERT INTO arrival VALUES(12,'01M2K286F1SAB3MNMYWH9ABN13');
INSERT INTO arrival VALUES(13,'01M35129FV8KKM7ESRK2P5J5BH');
INSERT INTO arrival VALUES(14,'01M3516NYBG4827K1S1J9N9M73');
INSERT INTO arrival VALUES(15,'01M351NQDJ4VGGPGAJS16HVNYY');
INSERT INTO arrival VALUES(16,'01M351V57TRY0R8P1J1H4BMADH');
INSERT INTO arrival VALUES(17,'01M35271X3CWWQN8EAM1KDWBMP');
INSERT INTO arrival VALUES(18,'01M352KNWAA453BAM519PQNWHK');
INSERT INTO arrival VALUES(19,'01M3Q4D5TZ3YG2W9KQMVCT7KMY');
INSERT INTO arrival VALUES(20,'01M3Q4MWRJMGV7VJRP3BC1TEHS');
INSERT INTO arrival VALUES(21,'01M3Q4ZNNZ2E5Y04G3H2YT83FN');
INSERT INTO arrival VALUES(22,'01M3Q5ARB1XWP9G1KP07JKFTQA');
INSERT INTO arrival VALUES(23,'01M3Q5P21ZERA1QZ12X9YEZNE5');
INSERT INTO arrival VALUES(24,'01M3Q7PMYDD7ZYXFE5GB0WMX3A');
INSERT INTO arrival VALUES(25,'01M3Q7WQA76W1QVGQQY7FFR4A0');
INSERT INTO arrival VALUES(26,'01M492TANMNF3JN0S381Z9N4PX');
INSERT INTO arrival VALUES(27,'01M493155XNVYWWKQNCDVW7M0D');
INSERT INTO arrival VALUES(28,'01M4950PDGCWZDHED7KS1KC3CB');
INSERT INTO arrival VALUES(29,'01M495B9MJMAP807N3JQSGC2DK');
INSERT INTO arrival VALUES(30,'01M495MYT72VFG48W7GGBCPTQ4');
INSERT INTO arrival VALUES(31,'01M495VQFC7N54CNN14P63FT3P');
INSERT INTO arrival VALUES(32,'01M49673A32DXZ9G5GMY1PJEDH');
INSERT INTO arrival VALUES(33,'01M496EVCP1ZXY65KTMNR9C7GP');
INSERT INTO arrival VALUES(34,'01M496KH4QNNE4HM3S6SVM8XTM');
INSERT INTO arrival VALUES(35,'01M4WR2D674S3W99YE7APQ2G6S');
INSERT INTO arrival VALUES(36,'01M4WR46SZCZSCWDC48RRYVEP9');
INSERT INTO arrival VALUES(37,'01M4WR7876M88N9AX6QP10EEH9');
INSERT INTO arrival VALUES(38,'01M4WR91TYEG93FDW3RKS6VMHX');
INSERT INTO arrival VALUES(39,'01M4WRE8S94VZWQX26A1DC2406');
INSERT INTO arrival VALUES(40,'01M4WRG2D1BHT39JQB2S2ZS528');
INSERT INTO arrival VALUES(41,'01M4WRKMY8WKP4YZQY177PVT4E');
INSERT INTO arrival VALUES(42,'01M4WRNEJ0BE90AXYK93ZTABB1');
INSERT INTO arrival VALUES(43,'01M4WRQMJNPC6GYP2X9RY8PFJY');
INSERT INTO arrival VALUES(44,'01M4WRSE6DJFXNCXFAQSZH6G05');
INSERT INTO arrival VALUES(45,'01M4WRX41FN4QFK9MP8186YYVS');
INSERT INTO arrival VALUES(46,'01M4WRYXN7QS209GW32EM4AZVM');
INSERT INTO arrival VALUES(47,'01M4WS1M7BCWKA0R05RPAPG0MG');
INSERT INTO arrival VALUES(48,'01M4WS3DV37HRV69Z5DRS9FJB9');
INSERT INTO arrival VALUES(49,'01M4WS6EABJ6BPR1QWWK0S729D');
INSERT INTO arrival VALUES(50,'01M4WS87Y34K46FQCHSY6T50CK');
INSERT INTO arrival VALUES(51,'01M4WSAMQV6WSNBV7KFPSWZZJA');
INSERT INTO arrival VALUES(52,'01M4WSCEBK6WN95PD8GKV6M4H3');
INSERT INTO arrival VALUES(53,'01M4WSHDJTQAADN0T1481H2BSY');
INSERT INTO arrival VALUES(54,'01M4WSK76J1C1NPXQNH6GM2TKH');
INSERT INTO arrival VALUES(55,'01M4WSQW2D3VGEVP3015J57DX0');
INSERT INTO arrival VALUES(56,'01M4WSSNP5K0JNX79SJ5XVFYK9');
INSERT INTO arrival VALUES(57,'01M4WSX0B647J1E0WNFDGS506J');
INSERT INTO arrival VALUES(58,'01M4WSYSYYRDQY537KM752H6ZE');
INSERT INTO arrival VALUES(59,'01M5D50H4P8R7S03TKJ23N0179');
INSERT INTO arrival VALUES(60,'01M5D53MG3JEABNK7XH89JHN4X');
INSERT INTO arrival VALUES(61,'01M5D56ARCZ0TB2KZ2Z77PMGZC');
INSERT INTO arrival VALUES(62,'01M5D58WSW71QBC35CVHGW9PTE');
INSERT INTO arrival VALUES(63,'01M5D5DS39NR20PAS3YSSM3KPR');
INSERT INTO arrival VALUES(64,'01M5D5HNN4JF7R2PKPF0GTY8ZB');
INSERT INTO arrival VALUES(65,'01M5D5NA8ES4Y6XHSBVFZ5JKMV');
INSERT INTO arrival VALUES(66,'01M5D5TW7CSCKRF8THN8PEZ56P');
INSERT INTO arrival VALUES(67,'01M5D5WEVQ4AMFZ6Z39KEVB1G3');
INSERT INTO arrival VALUES(68,'01M5D5ZBH6TSBXVW93KNRG7TP6');
INSERT INTO arrival VALUES(69,'01M5D66HV6AGMBSHAWECQ1QQDE');
INSERT INTO arrival VALUES(70,'01M5Z60HF6FR23R1AVZZEQKSGY');
INSERT INTO arrival VALUES(71,'01M6H60H1NT99ETZ8NDJ3QX9ZT');
INSERT INTO arrival VALUES(72,'01M6H63K90JN8SQVEHEZDSG36W');
INSERT INTO arrival VALUES(73,'01M6H64C7P4VSWQ8ZK2M6TBN0D');
INSERT INTO arrival VALUES(74,'01M6H687DRJS7RS9PQ34YEW71B');
INSERT INTO arrival VALUES(75,'01M6H6A0WEFGDB9QPHZHV65WJ9');
INSERT INTO arrival VALUES(76,'01M6H96F66PXBBKSGB8VDW5NMT');
INSERT INTO arrival VALUES(77,'01M73C5249XQQT1SDVA8HT6J7R');
INSERT INTO arrival VALUES(78,'01M73C5353ZJDXFAS9B8YM57VH');
INSERT INTO arrival VALUES(79,'01M7CPCWNZQRTBYGJDM9XH0Z0N');
INSERT INTO arrival VALUES(80,'01M7CPKE0CNEPQTDV5RFFDGZJ1');
INSERT INTO arrival VALUES(81,'01M7CPNDZRMSAMSPRSMYA8N1YY');
INSERT INTO arrival VALUES(82,'01M7CPV7EPQDKF07BT6ZJ0KFV1');
INSERT INTO arrival VALUES(83,'01M7CQ4KERATKT65YG8ARQQKRT');
INSERT INTO arrival VALUES(84,'01M7N8HSS2B3JQS911XDVKNGD8');
INSERT INTO arrival VALUES(85,'01M7N9G8924VVH1YFNFX1DTFS2');
INSERT INTO arrival VALUES(86,'01M7X9J6FFEJ57RFDXDPAT3EYM');
INSERT INTO arrival VALUES(87,'01M7YS5PRAB4VZ6HQEB7305ZBC');
INSERT INTO arrival VALUES(88,'01M7YSBHGHBT37Z96R6H419K91');
CREATE TABLE photo (
    name TEXT NOT NULL PRIMARY KEY CHECK (length(name) = 64),
    jpeg BLOB NOT NULL
) STRICT;
CREATE TABLE garment (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    number INTEGER NOT NULL,
    name TEXT NOT NULL,
    due TEXT,
    done INTEGER,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1)),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;
INSERT INTO garment VALUES('01M6H63K90JN8SQVEHEZDSG36W',1,'Choir trousers A','2026-11-20',1794336000137,0,'{"id":"01M6H63K90JN8SQVEHEZDSG36W","number":1,"name":"Choir trousers A","pattern":"01M5D50H4P8R7S03TKJ23N0179","view":"A","uses":[{"role":"01M5D53MG3JEABNK7XH89JHN4X","fabric":"01M2K0RHN24D3FR9ZD2ARGGXX9"}],"whom":"second tenor, third row","by":"2026-11-20","note":"","done":"2026-11-10T18:40:00.137Z","dropped":false}');
INSERT INTO garment VALUES('01M7N9G8924VVH1YFNFX1DTFS2',2,'Play coat','2026-12-12',NULL,0,'{"id":"01M7N9G8924VVH1YFNFX1DTFS2","number":2,"name":"Play coat","pattern":"01M5D5TW7CSCKRF8THN8PEZ56P","view":"-","uses":[{"role":"01M5D5WEVQ4AMFZ6Z39KEVB1G3","fabric":"01M2K0YTA656KF29GEQHYNDATP"},{"role":"01M5D5ZBH6TSBXVW93KNRG7TP6","fabric":"01M2K1RQFJB8YFKPGBYFM1D5N6"}],"whom":"the lamplighter","by":"2026-12-12","note":"two inside pockets","done":null,"dropped":false}');
CREATE TABLE setting (
    name TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL,
    entry TEXT NOT NULL REFERENCES entry (id)
) STRICT, WITHOUT ROWID;
CREATE TABLE person (
    id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    same_as TEXT
) STRICT, WITHOUT ROWID;
INSERT INTO person VALUES('01M4WR2C6Z5K18QBKBJ2X3VVF2','Ada',NULL);
INSERT INTO person VALUES('01M4WR777YJX77PJ5SN77AX0MG','Bram',NULL);
INSERT INTO person VALUES('01M4WRE7T1GTVN3JBJQHDT25JF','Cora',NULL);
INSERT INTO person VALUES('01M4WRKKZ0DYJRQ6QQDBQJ9BHF','Dario',NULL);
INSERT INTO person VALUES('01M4WRQKKD8MT6XCYV6HRP38DD','Edda',NULL);
INSERT INTO person VALUES('01M4WRX327PJ0Q50P1C3BJX45M','Finn',NULL);
INSERT INTO person VALUES('01M4WS1K83M04WM3TPRP0D8WSP','Greta',NULL);
INSERT INTO person VALUES('01M4WS6DB38DXWJ8VN5N887PKT','Hugo',NULL);
INSERT INTO person VALUES('01M4WSAKRK2C5ZDM0YVWSPEM2H','Ines',NULL);
INSERT INTO person VALUES('01M4WSHCKJ342P3FN6ZGE6BKYR','Jonas',NULL);
INSERT INTO person VALUES('01M4WSQV358VJNXD6PNC64TGCQ','Kaja',NULL);
INSERT INTO person VALUES('01M4WSWZBYZ1YPYEW6MKJTQYX1','Leo',NULL);
CREATE TABLE hand (
    fabric TEXT NOT NULL REFERENCES fabric (id),
    pulled_by TEXT NOT NULL,
    hand_dof REAL NOT NULL,
    hand_sum REAL NOT NULL,
    session_dof REAL NOT NULL,
    session_sum REAL NOT NULL,
    PRIMARY KEY (fabric, pulled_by)
) STRICT, WITHOUT ROWID;
INSERT INTO hand VALUES('01M2K0HR231DK01R1X5KSWJNW9','',4.0,0.21939197312108255077,0.0,0.0);
INSERT INTO hand VALUES('01M2K0RHN24D3FR9ZD2ARGGXX9','',0.0,0.0,0.0,0.0);
INSERT INTO hand VALUES('01M2K0YTA656KF29GEQHYNDATP','',4.0,0.0,0.0,0.0);
INSERT INTO hand VALUES('01M2K13RY8J66DCW638B3CSTCP','',4.0,0.24890703453682438972,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WR2C6Z5K18QBKBJ2X3VVF2',2.0,0.58653789544915080345,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WR777YJX77PJ5SN77AX0MG',2.0,0.61120667708780673788,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WRE7T1GTVN3JBJQHDT25JF',2.0,0.54978554476767316216,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WRKKZ0DYJRQ6QQDBQJ9BHF',2.0,0.61120667708780673788,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WRQKKD8MT6XCYV6HRP38DD',2.0,0.6234993858737966077,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WRX327PJ0Q50P1C3BJX45M',2.0,0.57422509526942067115,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WS1K83M04WM3TPRP0D8WSP',2.0,0.54978554476767316216,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WS6DB38DXWJ8VN5N887PKT',2.0,0.61120667708780673788,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WSAKRK2C5ZDM0YVWSPEM2H',2.0,0.6234993858737966077,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WSHCKJ342P3FN6ZGE6BKYR',2.0,0.54978554476767316216,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WSQV358VJNXD6PNC64TGCQ',2.0,0.57422509526942067115,0.0,0.0);
INSERT INTO hand VALUES('01M2K177BX012BK1ZQR769R9N8','01M4WSWZBYZ1YPYEW6MKJTQYX1',2.0,0.58653789544915080345,0.0,0.0);
INSERT INTO hand VALUES('01M2K1DA8MY53GXJQR53HFF5AK','',2.0,0.21500577544785351435,0.0,0.0);
INSERT INTO hand VALUES('01M2K1FYWHW40MN7S9D1SZG3JJ','',4.0,0.087578791219710877546,0.0,0.0);
INSERT INTO hand VALUES('01M2K1HPAQZE5FYWP4DQ58ZFHN','',6.0,0.77257592968229860108,0.0,0.0);
INSERT INTO hand VALUES('01M2K1RQFJB8YFKPGBYFM1D5N6','',4.0,0.26120242808000870837,0.0,0.0);
INSERT INTO hand VALUES('01M2K1YV1JGXDH6QB3SW9974JC','',4.0,0.37751756421749821379,0.0,0.0);
INSERT INTO hand VALUES('01M2K22C5TECRJKTHTFEJEME9R','',2.0,0.060395253523861346101,0.0,0.0);
INSERT INTO hand VALUES('01M2K286F1SAB3MNMYWH9ABN13','',2.0,0.12438970682480172957,0.0,0.0);
INSERT INTO hand VALUES('01M492TANMNF3JN0S381Z9N4PX','',1.0,0.16165159421945141104,0.0,0.0);
INSERT INTO hand VALUES('01M7CPCWNZQRTBYGJDM9XH0Z0N','',2.0,0.1481762760890061592,0.0,0.0);
INSERT INTO hand VALUES('01M7CPNDZRMSAMSPRSMYA8N1YY','',4.0,0.64423626664531097318,0.0,0.0);
CREATE INDEX entry_subject ON entry (subject, id);
CREATE INDEX fabric_tag ON fabric (tag);
CREATE INDEX test_fabric ON test (fabric, grain, pulled, id);
CREATE INDEX test_inbox ON test (pulled) WHERE fabric IS NULL;
CREATE INDEX role_pattern ON role (pattern, id);
CREATE INDEX orphan_waits_for ON orphan (waits_for);
CREATE INDEX test_pulled_by ON test (pulled_by) WHERE pulled_by IS NOT NULL;
COMMIT;
