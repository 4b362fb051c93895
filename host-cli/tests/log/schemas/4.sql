PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE entry (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) = 26),
    subject TEXT NOT NULL CHECK (length(subject) = 26),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;
INSERT INTO entry VALUES('01M3EBE9N4QDWD0ND8GJXPJ5WS','01M3EBE9N4QDWD0ND8GJXPJ5WS','{"kind":"fabric-added","tag":1,"name":"Vestry twill","fibre":"94 polyamide 6 elastane","construction":"woven","width_mm":1480.0,"length_mm":2600.0,"mg_per_m2":142000,"place":"blue crate","note":"dense, soft hand"}');
INSERT INTO entry VALUES('01M3EBQEM41GSJPTVJYSW051E0','01M3EBQEM41GSJPTVJYSW051E0','{"kind":"fabric-added","tag":2,"name":"Choirstall suiting","fibre":"cotton, a little elastane","construction":"woven","width_mm":1400.0,"length_mm":2200.0,"mg_per_m2":205000,"place":"blue crate","note":""}');
INSERT INTO entry VALUES('01M3EBV3T4C3NYPC602RBEWZTC','01M3EBV3T4C3NYPC602RBEWZTC','{"kind":"fabric-added","tag":3,"name":"Footlight drill","fibre":"cotton, waxed","construction":"woven","width_mm":1450.0,"length_mm":3000.0,"mg_per_m2":260000,"place":"under the bench","note":"does not give"}');
INSERT INTO entry VALUES('01M3EBYS04T39NE3GJHMJCXDZC','01M3EBYS04T39NE3GJHMJCXDZC','{"kind":"fabric-added","tag":4,"name":"Staircase corduroy","fibre":"polyester, elastane, brushed inside","construction":"woven","width_mm":1500.0,"length_mm":1800.0,"mg_per_m2":290000,"place":"shelf","note":""}');
INSERT INTO entry VALUES('01M3EC48S4THN96G9T3XB6GQW6','01M3EC48S4THN96G9T3XB6GQW6','{"kind":"fabric-added","tag":5,"name":"Practice sateen","fibre":"polyamide","construction":"woven","width_mm":1520.0,"length_mm":900.0,"mg_per_m2":92000,"place":"blue crate","note":"left over from a banner"}');
INSERT INTO entry VALUES('01M3ECDDR4TTAMYPWM36F9D2AS','01M3ECDDR4TTAMYPWM36F9D2AS','{"kind":"fabric-added","tag":8,"name":"Doorway rib","fibre":"95 cotton 5 elastane","construction":"knit","width_mm":800.0,"length_mm":700.0,"mg_per_m2":260000,"place":"basket","note":"","washed":true}');
INSERT INTO entry VALUES('01M3ECH2Y4FFRKQMK34NAA7EWJ','01M3ECH2Y4FFRKQMK34NAA7EWJ','{"kind":"fabric-added","tag":9,"name":"Curtain jersey","fibre":"78 polyamide 22 elastane","construction":"knit","width_mm":1550.0,"length_mm":1600.0,"mg_per_m2":230000,"place":"basket","note":""}');
INSERT INTO entry VALUES('01M3ECPJQ4V381008SFN5YH345','01M3ECPJQ4V381008SFN5YH345','{"kind":"fabric-added","tag":10,"name":"Prompter ponte","fibre":"cotton","construction":"knit","width_mm":1600.0,"length_mm":2000.0,"mg_per_m2":220000,"place":"basket","note":"","washed":true}');
INSERT INTO entry VALUES('01M3ED1J94KQZ07RJTVHXVNJEA','01M3ED1J94KQZ07RJTVHXVNJEA','{"kind":"fabric-added","tag":12,"name":"Wings lining","fibre":"polyester, knitted","construction":"knit","width_mm":1500.0,"length_mm":2500.0,"mg_per_m2":75000,"place":"shelf","note":""}');
INSERT INTO entry VALUES('01M3KGD7E4W9V3SP5XV4SH003W','01M3EBE9N4QDWD0ND8GJXPJ5WS','{"kind":"fabric-washed","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS","grain":"lengthwise","before":500.0,"after":494.0,"division":1.0,"note":"40 °C, dried flat"}');
INSERT INTO entry VALUES('01M3KGF2146WG6BPW97RTK7C30','01M3EBE9N4QDWD0ND8GJXPJ5WS','{"kind":"fabric-washed","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS","grain":"crosswise","before":500.0,"after":497.0,"division":1.0,"note":"40 °C, dried flat"}');
INSERT INTO entry VALUES('01M484J3H4WQDNEABCSB0KJKSR','01M484J3H4WQDNEABCSB0KJKSR','{"kind":"test-stored","fabric":"01M3ECH2Y4FFRKQMK34NAA7EWJ","pulled":"2026-10-06T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":171.0},{"extended_mm":172.0},{"extended_mm":171.0,"rests":[{"seconds":60,"recovered_mm":103.0},{"seconds":1800,"recovered_mm":102.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M484KY44YKHBTEE4YGR53TPB','01M484KY44YKHBTEE4YGR53TPB','{"kind":"test-stored","fabric":"01M3ECH2Y4FFRKQMK34NAA7EWJ","pulled":"2026-10-06T06:56:25.636Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":149.0},{"extended_mm":150.0},{"extended_mm":150.0,"rests":[{"seconds":60,"recovered_mm":103.0},{"seconds":1800,"recovered_mm":102.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4D9H1A428NWAAT5DQZ7JMAV','01M4D9H1A428NWAAT5DQZ7JMAV','{"kind":"test-stored","fabric":"01M3ECPJQ4V381008SFN5YH345","pulled":"2026-10-08T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":157.0},{"extended_mm":155.0},{"extended_mm":156.0,"rests":[{"seconds":60,"recovered_mm":106.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4D9JVX45D4FCS23THRE27YJ','01M4D9JVX45D4FCS23THRE27YJ','{"kind":"test-stored","fabric":"01M3ECPJQ4V381008SFN5YH345","pulled":"2026-10-08T06:56:25.636Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":118.0},{"extended_mm":119.0},{"extended_mm":117.0,"rests":[{"seconds":60,"recovered_mm":103.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4Z91S84V618HQRM7YB6QHEZ','01M4Z91S84V618HQRM7YB6QHEZ','{"kind":"test-stored","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS","pulled":"2026-10-15T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":271.0},{"extended_mm":272.0},{"extended_mm":271.0,"rests":[{"seconds":60,"recovered_mm":253.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M4Z93KV4F6MVY3DKEHH4CT57','01M4Z93KV4F6MVY3DKEHH4CT57','{"kind":"test-stored","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS","pulled":"2026-10-15T06:56:25.636Z","test":{"grain":"lengthwise","gauge_mm":250.0,"pulls":[{"extended_mm":257.0},{"extended_mm":258.0},{"extended_mm":257.0,"rests":[{"seconds":60,"recovered_mm":251.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M5KWGP74S9G55T02Z28JBABS','01M5KWGP74S9G55T02Z28JBABS','{"kind":"test-stored","fabric":"01M3EBQEM41GSJPTVJYSW051E0","pulled":"2026-10-23T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":106.0,"rests":[{"seconds":60,"recovered_mm":101.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M5KWMBD4CW41H9RQFSMW1N60','01M5KWMBD4CW41H9RQFSMW1N60','{"kind":"test-stored","fabric":"01M3EBV3T4C3NYPC602RBEWZTC","pulled":"2026-10-23T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":252.0},{"extended_mm":252.0},{"extended_mm":252.0,"rests":[{"seconds":60,"recovered_mm":250.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M5VMVF34GK80YDMM4AVBNSDJ','01M5VMVF34GK80YDMM4AVBNSDJ','{"kind":"fabric-added","tag":11,"name":"Gym hall jersey","fibre":"polyamide, elastane; twenty years old","construction":"knit","width_mm":1400.0,"length_mm":1500.0,"place":"attic","note":"no spring left"}');
INSERT INTO entry VALUES('01M5VMX9P4K9S5WAWK7P8FF5YN','01M5VMX9P4K9S5WAWK7P8FF5YN','{"kind":"test-stored","fabric":"01M5VMVF34GK80YDMM4AVBNSDJ","pulled":"2026-10-26T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":158.0},{"extended_mm":160.0,"rests":[{"seconds":60,"recovered_mm":131.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M60RQKK4GTYRJ2DVAYXZKQ32','01M60RQKK4GTYRJ2DVAYXZKQ32','{"kind":"test-stored","fabric":"01M3EBYS04T39NE3GJHMJCXDZC","pulled":"2026-10-28T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":245.0},{"extended_mm":246.0},{"extended_mm":245.0,"rests":[{"seconds":60,"recovered_mm":205.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M60RSE64RRM1F9417B2NY9NB','01M60RSE64RRM1F9417B2NY9NB','{"kind":"test-stored","fabric":"01M3EBYS04T39NE3GJHMJCXDZC","pulled":"2026-10-28T06:56:25.636Z","test":{"grain":"lengthwise","gauge_mm":200.0,"pulls":[{"extended_mm":224.0},{"extended_mm":225.0},{"extended_mm":224.0,"rests":[{"seconds":60,"recovered_mm":203.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M60STCW4F8JT5DHZ9QY89ZKR','01M60STCW4F8JT5DHZ9QY89ZKR','{"kind":"test-stored","fabric":"01M3ED1J94KQZ07RJTVHXVNJEA","pulled":"2026-10-28T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":233.0},{"extended_mm":234.0},{"extended_mm":234.0,"rests":[{"seconds":60,"recovered_mm":203.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M60SW7F46P43N2XBPTF9Q1TP','01M60SW7F46P43N2XBPTF9Q1TP','{"kind":"test-stored","fabric":"01M3ED1J94KQZ07RJTVHXVNJEA","pulled":"2026-10-28T06:56:25.636Z","test":{"grain":"lengthwise","gauge_mm":200.0,"pulls":[{"extended_mm":221.0},{"extended_mm":222.0},{"extended_mm":222.0,"rests":[{"seconds":60,"recovered_mm":202.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M65XZPB431ASECGR15864E70','01M65XZPB431ASECGR15864E70','{"kind":"test-stored","fabric":"01M3ECDDR4TTAMYPWM36F9D2AS","pulled":"2026-10-30T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":178.0},{"extended_mm":181.0},{"extended_mm":179.0,"rests":[{"seconds":60,"recovered_mm":105.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M6NC2VC4TJCNEADK178RQ460','01M6NC2VC4TJCNEADK178RQ460','{"kind":"test-stored","fabric":"01M3EC48S4THN96G9T3XB6GQW6","pulled":"2026-11-05T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":250.0,"pulls":[{"extended_mm":270.0},{"extended_mm":270.0},{"extended_mm":271.0,"rests":[{"seconds":60,"recovered_mm":252.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M77E2AV4AD2XP7TFTXE064YN','01M77E2AV4AD2XP7TFTXE064YN','{"kind":"pattern-added","name":"Choir trousers","note":"view A with a fly, view B lined"}');
INSERT INTO entry VALUES('01M77E45E4JNFSFWNJGMP3CTSW','01M77E45E4JNFSFWNJGMP3CTSW','{"kind":"role-added","pattern":"01M77E2AV4AD2XP7TFTXE064YN","view":"A","name":"main","demand":{"crosswise":{"least":{"percent":5.0},"most":{"percent":15.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"cloth":{"length_mm":1700.0,"width_mm":1400.0},"note":"slight stretch, soft enough to move in"}');
INSERT INTO entry VALUES('01M77E601427ZEY4NCGK54G915','01M77E601427ZEY4NCGK54G915','{"kind":"role-added","pattern":"01M77E2AV4AD2XP7TFTXE064YN","view":"A","name":"waistband","demand":{"crosswise":{"least":{"percent":15.0},"most":{"percent":40.0}},"growth_most":{"percent":5.0}},"constructions":[],"cloth":{"length_mm":600.0,"width_mm":1400.0},"note":""}');
INSERT INTO entry VALUES('01M77E7TM4YHMB528DJKYKWR14','01M77E7TM4YHMB528DJKYKWR14','{"kind":"role-added","pattern":"01M77E2AV4AD2XP7TFTXE064YN","view":"A","name":"cuff","demand":{"crosswise":{"least":{"percent":60.0}},"growth_most":{"percent":10.0}},"constructions":["knit"],"cloth":{"length_mm":250.0,"width_mm":700.0},"note":""}');
INSERT INTO entry VALUES('01M77E9N74K1748R9F7A99STC7','01M77E9N74K1748R9F7A99STC7','{"kind":"role-added","pattern":"01M77E2AV4AD2XP7TFTXE064YN","view":"B","name":"main","demand":{"lengthwise":{"least":{"percent":2.0}},"crosswise":{"least":{"percent":5.0},"most":{"percent":15.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"cloth":{"length_mm":2100.0,"width_mm":1400.0},"note":""}');
INSERT INTO entry VALUES('01M77EBFT402V4B39JVFG81J6Z','01M77EBFT402V4B39JVFG81J6Z','{"kind":"role-added","pattern":"01M77E2AV4AD2XP7TFTXE064YN","view":"B","name":"lining","demand":{"lengthwise":{"least":{"percent":5.0}},"crosswise":{"least":{"percent":8.0}},"growth_most":{"percent":3.0}},"constructions":[],"cloth":{"length_mm":1500.0,"width_mm":1400.0},"note":"must give as the main cloth gives"}');
INSERT INTO entry VALUES('01M77EDAD4Z4YF70TXCQ3TZXNC','01M77EDAD4Z4YF70TXCQ3TZXNC','{"kind":"pattern-added","name":"Play coat","note":"close fitting"}');
INSERT INTO entry VALUES('01M77EF504MBHF0CAVKTRHKZA5','01M77EF504MBHF0CAVKTRHKZA5','{"kind":"role-added","pattern":"01M77EDAD4Z4YF70TXCQ3TZXNC","view":"-","name":"main","demand":{"lengthwise":{"least":{"percent":20.0}},"crosswise":{"least":{"percent":50.0}},"growth_most":{"percent":5.0}},"constructions":["knit"],"cloth":{"length_mm":1200.0,"width_mm":1500.0},"note":""}');
INSERT INTO entry VALUES('01M77EGZK4XCC5PW66DJ2NNE4C','01M77EGZK4XCC5PW66DJ2NNE4C','{"kind":"role-added","pattern":"01M77EDAD4Z4YF70TXCQ3TZXNC","view":"-","name":"gusset","demand":{"lengthwise":{"least":{"percent":10.0}},"crosswise":{"least":{"percent":30.0}},"growth_most":{"percent":6.0}},"constructions":["knit"],"cloth":{"length_mm":200.0,"width_mm":600.0},"note":""}');
INSERT INTO entry VALUES('01M7HPGJZ4PD6VM204ZTYNYBTC','01M7HPGJZ4PD6VM204ZTYNYBTC','{"kind":"fabric-added","tag":6,"name":"Matinee gabardine","fibre":"cotton, elastane","construction":"woven","width_mm":1360.0,"mg_per_m2":130000,"place":"","note":"","shop":{"place":"the market hall","price":{"hundredths":1150,"per":"metre"}}}');
INSERT INTO entry VALUES('01M7HPJDJ4C4BPMBEQ1A8T34FF','01M7HPJDJ4C4BPMBEQ1A8T34FF','{"kind":"test-stored","fabric":"01M7HPGJZ4PD6VM204ZTYNYBTC","pulled":"2026-11-16T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":200.0,"pulls":[{"extended_mm":216.0},{"extended_mm":217.0},{"extended_mm":216.0,"rests":[{"seconds":60,"recovered_mm":202.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M7HQFQ24PATNWWNQAQHS0W10','01M7HQFQ24PATNWWNQAQHS0W10','{"kind":"fabric-added","tag":13,"name":"Encore double knit","fibre":"80 polyester 20 elastane","construction":"knit","width_mm":1500.0,"mg_per_m2":250000,"place":"","note":"","shop":{"place":"the market hall","price":{"hundredths":1490,"per":"metre"}}}');
INSERT INTO entry VALUES('01M7HQHHN4J190CN7QN3GB2ESA','01M7HQHHN4J190CN7QN3GB2ESA','{"kind":"test-stored","fabric":"01M7HQFQ24PATNWWNQAQHS0W10","pulled":"2026-11-16T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":183.0},{"extended_mm":185.0},{"extended_mm":184.0,"rests":[{"seconds":60,"recovered_mm":103.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M7HQKC84HSEN8ASMAJX5NTDC','01M7HQKC84HSEN8ASMAJX5NTDC','{"kind":"test-stored","fabric":"01M7HQFQ24PATNWWNQAQHS0W10","pulled":"2026-11-16T06:56:25.636Z","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":162.0},{"extended_mm":163.0},{"extended_mm":162.0,"rests":[{"seconds":60,"recovered_mm":103.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M7SEAWG461YNZD1MPS5ZZ05A','01M7SEAWG461YNZD1MPS5ZZ05A','{"kind":"test-stored","fabric":"01M3ECPJQ4V381008SFN5YH345","pulled":"2026-11-19T06:56:25.636Z","test":{"grain":"crosswise","gauge_mm":100.0,"pulls":[{"extended_mm":143.0},{"extended_mm":142.0},{"extended_mm":143.0,"rests":[{"seconds":60,"recovered_mm":106.0}]}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M7W07454RDH2F3XQ13M23G9E','01M7W07454RDH2F3XQ13M23G9E','{"kind":"fabric-added","tag":7,"name":"Hymnal lawn","fibre":"linen, viscose","construction":"woven","width_mm":1380.0,"length_mm":2400.0,"place":"shelf","note":"not pulled yet"}');
INSERT INTO entry VALUES('01M8F5S390QH9XFA9RD7YGC1W0','01M3ECDDR4TTAMYPWM36F9D2AS','{"kind":"fabric-changed","fabric":"01M3ECDDR4TTAMYPWM36F9D2AS","washed":true}');
INSERT INTO entry VALUES('01M8FGPEGS91HGSFKZ4XQR2DKR','01M3EBE9N4QDWD0ND8GJXPJ5WS','{"kind":"photo-added","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS","photo":"7531e0b8150fbead6a4b433dbe722e8ea08a56c718906a557069133312a2d469","thumbnail":"05e76b15ce904d6c8a95bb6be1dd7cb76e4143b39a994d0b26f9ed8a0ee415b8","width_px":48,"height_px":32,"colour":"#46506e","note":"by daylight"}');
INSERT INTO entry VALUES('01M8FGPEHDV1WF4CJ8Z1VCT35Y','01M3EBE9N4QDWD0ND8GJXPJ5WS','{"kind":"fabric-learned","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS","needle":"universal 80/12","stitch":"straight 2.5"}');
INSERT INTO entry VALUES('01M8FGPEJN9YMC4EYA5K4KWNQ5','01M3EBE9N4QDWD0ND8GJXPJ5WS','{"kind":"fabric-changed","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS","finish":"plain","drape":"crisp","purpose":"outer","colour":"navy"}');
INSERT INTO entry VALUES('01M8FGPEM0KS0H5Y21C0R6Y9EC','01M8FGPEM0KS0H5Y21C0R6Y9EC','{"kind":"garment-begun","number":1,"name":"Choir trousers A","pattern":"01M77E2AV4AD2XP7TFTXE064YN","view":"A","uses":[{"role":"01M77E45E4JNFSFWNJGMP3CTSW","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS"}],"for":"the tenor","by":"2026-12-12"}');
INSERT INTO entry VALUES('01M8FGPEN0Q4MY7CXRWSYBFJTB','01M3EBE9N4QDWD0ND8GJXPJ5WS','{"kind":"fabric-washed","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS","grain":"lengthwise","before":500.0,"after":490.0,"division":1.0}');
INSERT INTO entry VALUES('01M8FGPEPEH2E92ZZF3Y0AVJRY','01M8FGPEPEH2E92ZZF3Y0AVJRY','{"kind":"units-set","units":"cm"}');
INSERT INTO entry VALUES('01M8FTPY0JDTMZV7QBDZNGAM1F','01M8FTPY0JBTJAJ73SWSXGH0HX','{"kind":"person-named","person":"01M8FTPY0JBTJAJ73SWSXGH0HX","name":"Anna"}');
INSERT INTO entry VALUES('01M8FTPY0JJ2NMN5TBG16V9NKR','01M8FTPY0JJ2NMN5TBG16V9NKR','{"kind":"test-stored","fabric":"01M3EBQEM41GSJPTVJYSW051E0","pulled":"2026-11-28T01:01:00.817Z","pulled_by":"01M8FTPY0JBTJAJ73SWSXGH0HX","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":101.0},{"extended_mm":101.0},{"extended_mm":101.0}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M8FTPY4KQHX76DJT6GVBJEMS','01M8FTPY4KTYX84T9646NP7VTB','{"who":"01M8FTPY0JBTJAJ73SWSXGH0HX","kind":"person-named","person":"01M8FTPY4KTYX84T9646NP7VTB","name":"Ben"}');
INSERT INTO entry VALUES('01M8FTPY4M7JG6FG0TN36KYJ7F','01M8FTPY4M7JG6FG0TN36KYJ7F','{"who":"01M8FTPY0JBTJAJ73SWSXGH0HX","kind":"test-stored","fabric":"01M3EBQEM41GSJPTVJYSW051E0","pulled":"2026-11-28T01:01:00.946Z","pulled_by":"01M8FTPY4KTYX84T9646NP7VTB","test":{"grain":"lengthwise","gauge_mm":100.0,"pulls":[{"extended_mm":101.0},{"extended_mm":101.0},{"extended_mm":102.0}],"division_mm":1.0,"held":"folded","settled":true}}');
INSERT INTO entry VALUES('01M8FTPY85C1QGKG2VP68TCGM5','01M8FTPY4KTYX84T9646NP7VTB','{"who":"01M8FTPY0JBTJAJ73SWSXGH0HX","kind":"person-merged","person":"01M8FTPY4KTYX84T9646NP7VTB","same_as":"01M8FTPY0JBTJAJ73SWSXGH0HX"}');
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
INSERT INTO fabric VALUES('01M3EBE9N4QDWD0ND8GJXPJ5WS',1,'Vestry twill','94 polyamide 6 elastane','woven',2368000,4160000,142000,'blue crate','dense, soft hand',0,NULL,'{"before":500.0,"after":490.0,"division":1.0}','{"before":500.0,"after":497.0,"division":1.0}',0,NULL,'{"finish":"plain","drape":"crisp","purpose":"outer","one_way":false,"colour":"navy","photos":[{"id":"01M8FGPEGS91HGSFKZ4XQR2DKR","photo":"7531e0b8150fbead6a4b433dbe722e8ea08a56c718906a557069133312a2d469","thumbnail":"05e76b15ce904d6c8a95bb6be1dd7cb76e4143b39a994d0b26f9ed8a0ee415b8","width_px":48,"height_px":32,"colour":"#46506e","note":"by daylight","dropped":false}],"lessons":[{"id":"01M8FGPEHDV1WF4CJ8Z1VCT35Y","needle":"universal 80/12","stitch":"straight 2.5","dropped":false}]}');
INSERT INTO fabric VALUES('01M3EBQEM41GSJPTVJYSW051E0',2,'Choirstall suiting','cotton, a little elastane','woven',2240000,3520000,205000,'blue crate','',0,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M3EBV3T4C3NYPC602RBEWZTC',3,'Footlight drill','cotton, waxed','woven',2320000,4800000,260000,'under the bench','does not give',0,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M3EBYS04T39NE3GJHMJCXDZC',4,'Staircase corduroy','polyester, elastane, brushed inside','woven',2400000,2880000,290000,'shelf','',0,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M3EC48S4THN96G9T3XB6GQW6',5,'Practice sateen','polyamide','woven',2432000,1440000,92000,'blue crate','left over from a banner',0,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M3ECDDR4TTAMYPWM36F9D2AS',8,'Doorway rib','95 cotton 5 elastane','knit',1280000,1120000,260000,'basket','',1,NULL,NULL,NULL,0,1795805711648,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M3ECH2Y4FFRKQMK34NAA7EWJ',9,'Curtain jersey','78 polyamide 22 elastane','knit',2480000,2560000,230000,'basket','',0,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M3ECPJQ4V381008SFN5YH345',10,'Prompter ponte','cotton','knit',2560000,3200000,220000,'basket','',1,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M3ED1J94KQZ07RJTVHXVNJEA',12,'Wings lining','polyester, knitted','knit',2400000,4000000,75000,'shelf','',0,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M5VMVF34GK80YDMM4AVBNSDJ',11,'Gym hall jersey','polyamide, elastane; twenty years old','knit',2240000,2400000,NULL,'attic','no spring left',0,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M7HPGJZ4PD6VM204ZTYNYBTC',6,'Matinee gabardine','cotton, elastane','woven',2176000,NULL,130000,'','',0,'{"place":"the market hall","price":{"hundredths":1150,"per":"metre"}}',NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M7HQFQ24PATNWWNQAQHS0W10',13,'Encore double knit','80 polyester 20 elastane','knit',2400000,NULL,250000,'','',0,'{"place":"the market hall","price":{"hundredths":1490,"per":"metre"}}',NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
INSERT INTO fabric VALUES('01M7W07454RDH2F3XQ13M23G9E',7,'Hymnal lawn','linen, viscose','woven',2208000,3840000,NULL,'shelf','not pulled yet',0,NULL,NULL,NULL,0,NULL,'{"one_way":false,"colour":""}');
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
INSERT INTO test VALUES('01M484J3H4WQDNEABCSB0KJKSR','01M3ECH2Y4FFRKQMK34NAA7EWJ',NULL,'crosswise',1791269785636,0,NULL,NULL,'',X'00c00c640100010101000347484702023c0602880e04696e9710',71.33333587646484375,2.0,2.0,0.13395999022262400357,0,'',NULL);
INSERT INTO test VALUES('01M484KY44YKHBTEE4YGR53TPB','01M3ECH2Y4FFRKQMK34NAA7EWJ',NULL,'lengthwise',1791269785636,0,NULL,NULL,'',X'00c00c640100000101000331323202023c0602880e0483f437f3',49.666667938232421874,2.0,2.0,0.17511323359778882546,0,'',NULL);
INSERT INTO test VALUES('01M4D9H1A428NWAAT5DQZ7JMAV','01M3ECPJQ4V381008SFN5YH345',NULL,'crosswise',1791442585636,0,NULL,NULL,'',X'00c00c640100010101000339373801023c0c112e703d',56.0,6.0,2.0,0.48068538888801026764,0,'',NULL);
INSERT INTO test VALUES('01M4D9JVX45D4FCS23THRE27YJ','01M3ECPJQ4V381008SFN5YH345',NULL,'lengthwise',1791442585636,0,NULL,NULL,'',X'00c00c640100000101000312131101023c0653ec56db',18.0,3.0,2.0,1.1134418515349895351,0,'',NULL);
INSERT INTO test VALUES('01M4Z91S84V618HQRM7YB6QHEZ','01M3EBE9N4QDWD0ND8GJXPJ5WS',NULL,'crosswise',1792047385636,0,NULL,NULL,'',X'00c00cfa010100010101000315161501023c062e338d5a',8.5333337783813476562,1.2000000476837158203,2.0,0.10315814181130138205,0,'',NULL);
INSERT INTO test VALUES('01M4Z93KV4F6MVY3DKEHH4CT57','01M3EBE9N4QDWD0ND8GJXPJ5WS',NULL,'lengthwise',1792047385636,0,NULL,NULL,'',X'00c00cfa010100000101000307080701023c02b691f815',2.9333333969116210937,0.40000000596046447753,2.0,0.22736152459652916868,0,'',NULL);
INSERT INTO test VALUES('01M5KWGP74S9G55T02Z28JBABS','01M3EBQEM41GSJPTVJYSW051E0',NULL,'crosswise',1792738585636,0,NULL,NULL,'',X'00c00c64010001010100010601003c02498b9342',6.0,1.0,0.0,0.0,0,'',NULL);
INSERT INTO test VALUES('01M5KWMBD4CW41H9RQFSMW1N60','01M3EBV3T4C3NYPC602RBEWZTC',NULL,'crosswise',1792738585636,0,NULL,NULL,'',X'00c00cfa010100010101000302020201023c00443f105b',0.80000001192092895507,0.0,2.0,0.12602394119834822716,0,'',NULL);
INSERT INTO test VALUES('01M5VMX9P4K9S5WAWK7P8FF5YN','01M5VMVF34GK80YDMM4AVBNSDJ',NULL,'crosswise',1792997785636,0,NULL,NULL,'',X'00c00c64010001010100023a3c01013c3e3e330ad2',59.0,31.0,1.0,0.46245519646156396653,0,'',NULL);
INSERT INTO test VALUES('01M60RQKK4GTYRJ2DVAYXZKQ32','01M3EBYS04T39NE3GJHMJCXDZC',NULL,'crosswise',1793170585636,0,NULL,NULL,'',X'00c00cc801010001010100032d2e2d01023c0a378277c7',22.666666030883789062,2.5,2.0,0.078241914309947382943,0,'',NULL);
INSERT INTO test VALUES('01M60RSE64RRM1F9417B2NY9NB','01M3EBYS04T39NE3GJHMJCXDZC',NULL,'lengthwise',1793170585636,0,NULL,NULL,'',X'00c00cc8010100000101000318191801023c06650881df',12.166666984558105468,1.5,2.0,0.12397077938871502167,0,'',NULL);
INSERT INTO test VALUES('01M60STCW4F8JT5DHZ9QY89ZKR','01M3ED1J94KQZ07RJTVHXVNJEA',NULL,'crosswise',1793170585636,0,NULL,NULL,'',X'00c00cc8010100010101000321222201023c06c2f3f3fc',16.833333969116210937,1.5,2.0,0.097501428953443339264,0,'',NULL);
INSERT INTO test VALUES('01M60SW7F46P43N2XBPTF9Q1TP','01M3ED1J94KQZ07RJTVHXVNJEA',NULL,'lengthwise',1793170585636,0,NULL,NULL,'',X'00c00cc8010100000101000315161601023c043d043e1e',10.83333301544189453,1.0,2.0,0.1350803329418146792,0,'',NULL);
INSERT INTO test VALUES('01M65XZPB431ASECGR15864E70','01M3ECDDR4TTAMYPWM36F9D2AS',NULL,'crosswise',1793343385636,0,NULL,NULL,'',X'00c00c64010001010100034e514f01023c0a19b58368',79.333335876464843748,5.0,2.0,0.86673370139454763982,0,'',NULL);
INSERT INTO test VALUES('01M6NC2VC4TJCNEADK178RQ460','01M3EC48S4THN96G9T3XB6GQW6',NULL,'crosswise',1793861785636,0,NULL,NULL,'',X'00c00cfa010100010101000314141501023c04bdf83c5f',8.1333332061767578125,0.80000001192092895507,2.0,0.10688349534014904285,0,'',NULL);
INSERT INTO test VALUES('01M7HPJDJ4C4BPMBEQ1A8T34FF','01M7HPGJZ4PD6VM204ZTYNYBTC',NULL,'crosswise',1794812185636,0,NULL,NULL,'',X'00c00cc8010100010101000310111001023c04eda2e645',8.1666669845581054687,1.0,2.0,0.16650202273128728025,0,'',NULL);
INSERT INTO test VALUES('01M7HQHHN4J190CN7QN3GB2ESA','01M7HQFQ24PATNWWNQAQHS0W10',NULL,'crosswise',1794812185636,0,NULL,NULL,'',X'00c00c640100010101000353555401023c06b9e09deb',84.0,3.0,2.0,0.35606896099154200507,0,'',NULL);
INSERT INTO test VALUES('01M7HQKC84HSEN8ASMAJX5NTDC','01M7HQFQ24PATNWWNQAQHS0W10',NULL,'lengthwise',1794812185636,0,NULL,NULL,'',X'00c00c64010000010100033e3f3e01023c0623c2b4e0',62.333332061767578124,3.0,2.0,0.14800928343562400057,0,'',NULL);
INSERT INTO test VALUES('01M7SEAWG461YNZD1MPS5ZZ05A','01M3ECPJQ4V381008SFN5YH345',NULL,'crosswise',1795071385636,0,NULL,NULL,'',X'00c00c64010001010100032b2a2b01023c0ce15f3955',42.666667938232421875,6.0,2.0,0.1959331629916873374,0,'',NULL);
INSERT INTO test VALUES('01M8FTPY0JJ2NMN5TBG16V9NKR','01M3EBQEM41GSJPTVJYSW051E0',NULL,'lengthwise',1795827660817,0,NULL,NULL,'',X'00c00c640100000101000301010100516761e8',1.0,NULL,2.0,0.0,0,'','01M8FTPY0JBTJAJ73SWSXGH0HX');
INSERT INTO test VALUES('01M8FTPY4M7JG6FG0TN36KYJ7F','01M3EBQEM41GSJPTVJYSW051E0',NULL,'lengthwise',1795827660946,0,NULL,NULL,'',X'00c00c64010000010100030101020092344cc3',1.3333333730697631835,NULL,2.0,0.7884017749597369562,0,'','01M8FTPY0JBTJAJ73SWSXGH0HX');
CREATE TABLE pattern (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    name TEXT NOT NULL,
    note TEXT NOT NULL,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1))
) STRICT, WITHOUT ROWID;
INSERT INTO pattern VALUES('01M77E2AV4AD2XP7TFTXE064YN','Choir trousers','view A with a fly, view B lined',0);
INSERT INTO pattern VALUES('01M77EDAD4Z4YF70TXCQ3TZXNC','Play coat','close fitting',0);
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
INSERT INTO role VALUES('01M77E45E4JNFSFWNJGMP3CTSW','01M77E2AV4AD2XP7TFTXE064YN','A','main','{"demand":{"crosswise":{"least":{"percent":5.0},"most":{"percent":15.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"cloth":{"length_mm":1700.0,"width_mm":1400.0}}','slight stretch, soft enough to move in',0);
INSERT INTO role VALUES('01M77E601427ZEY4NCGK54G915','01M77E2AV4AD2XP7TFTXE064YN','A','waistband','{"demand":{"crosswise":{"least":{"percent":15.0},"most":{"percent":40.0}},"growth_most":{"percent":5.0}},"constructions":[],"cloth":{"length_mm":600.0,"width_mm":1400.0}}','',0);
INSERT INTO role VALUES('01M77E7TM4YHMB528DJKYKWR14','01M77E2AV4AD2XP7TFTXE064YN','A','cuff','{"demand":{"crosswise":{"least":{"percent":60.0}},"growth_most":{"percent":10.0}},"constructions":["knit"],"cloth":{"length_mm":250.0,"width_mm":700.0}}','',0);
INSERT INTO role VALUES('01M77E9N74K1748R9F7A99STC7','01M77E2AV4AD2XP7TFTXE064YN','B','main','{"demand":{"lengthwise":{"least":{"percent":2.0}},"crosswise":{"least":{"percent":5.0},"most":{"percent":15.0}},"growth_most":{"percent":3.0}},"constructions":["woven"],"cloth":{"length_mm":2100.0,"width_mm":1400.0}}','',0);
INSERT INTO role VALUES('01M77EBFT402V4B39JVFG81J6Z','01M77E2AV4AD2XP7TFTXE064YN','B','lining','{"demand":{"lengthwise":{"least":{"percent":5.0}},"crosswise":{"least":{"percent":8.0}},"growth_most":{"percent":3.0}},"constructions":[],"cloth":{"length_mm":1500.0,"width_mm":1400.0}}','must give as the main cloth gives',0);
INSERT INTO role VALUES('01M77EF504MBHF0CAVKTRHKZA5','01M77EDAD4Z4YF70TXCQ3TZXNC','-','main','{"demand":{"lengthwise":{"least":{"percent":20.0}},"crosswise":{"least":{"percent":50.0}},"growth_most":{"percent":5.0}},"constructions":["knit"],"cloth":{"length_mm":1200.0,"width_mm":1500.0}}','',0);
INSERT INTO role VALUES('01M77EGZK4XCC5PW66DJ2NNE4C','01M77EDAD4Z4YF70TXCQ3TZXNC','-','gusset','{"demand":{"lengthwise":{"least":{"percent":10.0}},"crosswise":{"least":{"percent":30.0}},"growth_most":{"percent":6.0}},"constructions":["knit"],"cloth":{"length_mm":200.0,"width_mm":600.0}}','',0);
CREATE TABLE orphan (
    subject TEXT NOT NULL PRIMARY KEY,
    waits_for TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE draft (
    name TEXT NOT NULL PRIMARY KEY,
    text TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO draft VALUES('desk','{"who":"01M8FTPY0JBTJAJ73SWSXGH0HX","tags":{"least":100,"most":199}}');
CREATE TABLE arrival (
    number INTEGER NOT NULL PRIMARY KEY,
    entry TEXT NOT NULL REFERENCES entry (id)
) STRICT;
INSERT INTO arrival VALUES(1,'01M3EBE9N4QDWD0ND8GJXPJ5WS');
INSERT INTO arrival VALUES(2,'01M3EBQEM41GSJPTVJYSW051E0');
INSERT INTO arrival VALUES(3,'01M3EBV3T4C3NYPC602RBEWZTC');
INSERT INTO arrival VALUES(4,'01M3EBYS04T39NE3GJHMJCXDZC');
INSERT INTO arrival VALUES(5,'01M3EC48S4THN96G9T3XB6GQW6');
INSERT INTO arrival VALUES(6,'01M3ECDDR4TTAMYPWM36F9D2AS');
INSERT INTO arrival VALUES(7,'01M3ECH2Y4FFRKQMK34NAA7EWJ');
INSERT INTO arrival VALUES(8,'01M3ECPJQ4V381008SFN5YH345');
INSERT INTO arrival VALUES(9,'01M3ED1J94KQZ07RJTVHXVNJEA');
INSERT INTO arrival VALUES(10,'01M3KGD7E4W9V3SP5XV4SH003W');
INSERT INTO arrival VALUES(11,'01M3KGF2146WG6BPW97RTK7C30');
INSERT INTO arrival VALUES(12,'01M484J3H4WQDNEABCSB0KJKSR');
INSERT INTO arrival VALUES(13,'01M484KY44YKHBTEE4YGR53TPB');
INSERT INTO arrival VALUES(14,'01M4D9H1A428NWAAT5DQZ7JMAV');
INSERT INTO arrival VALUES(15,'01M4D9JVX45D4FCS23THRE27YJ');
INSERT INTO arrival VALUES(16,'01M4Z91S84V618HQRM7YB6QHEZ');
INSERT INTO arrival VALUES(17,'01M4Z93KV4F6MVY3DKEHH4CT57');
INSERT INTO arrival VALUES(18,'01M5KWGP74S9G55T02Z28JBABS');
INSERT INTO arrival VALUES(19,'01M5KWMBD4CW41H9RQFSMW1N60');
INSERT INTO arrival VALUES(20,'01M5VMVF34GK80YDMM4AVBNSDJ');
INSERT INTO arrival VALUES(21,'01M5VMX9P4K9S5WAWK7P8FF5YN');
INSERT INTO arrival VALUES(22,'01M60RQKK4GTYRJ2DVAYXZKQ32');
INSERT INTO arrival VALUES(23,'01M60RSE64RRM1F9417B2NY9NB');
INSERT INTO arrival VALUES(24,'01M60STCW4F8JT5DHZ9QY89ZKR');
INSERT INTO arrival VALUES(25,'01M60SW7F46P43N2XBPTF9Q1TP');
INSERT INTO arrival VALUES(26,'01M65XZPB431ASECGR15864E70');
INSERT INTO arrival VALUES(27,'01M6NC2VC4TJCNEADK178RQ460');
INSERT INTO arrival VALUES(28,'01M77E2AV4AD2XP7TFTXE064YN');
INSERT INTO arrival VALUES(29,'01M77E45E4JNFSFWNJGMP3CTSW');
INSERT INTO arrival VALUES(30,'01M77E601427ZEY4NCGK54G915');
INSERT INTO arrival VALUES(31,'01M77E7TM4YHMB528DJKYKWR14');
INSERT INTO arrival VALUES(32,'01M77E9N74K1748R9F7A99STC7');
INSERT INTO arrival VALUES(33,'01M77EBFT402V4B39JVFG81J6Z');
INSERT INTO arrival VALUES(34,'01M77EDAD4Z4YF70TXCQ3TZXNC');
INSERT INTO arrival VALUES(35,'01M77EF504MBHF0CAVKTRHKZA5');
INSERT INTO arrival VALUES(36,'01M77EGZK4XCC5PW66DJ2NNE4C');
INSERT INTO arrival VALUES(37,'01M7HPGJZ4PD6VM204ZTYNYBTC');
INSERT INTO arrival VALUES(38,'01M7HPJDJ4C4BPMBEQ1A8T34FF');
INSERT INTO arrival VALUES(39,'01M7HQFQ24PATNWWNQAQHS0W10');
INSERT INTO arrival VALUES(40,'01M7HQHHN4J190CN7QN3GB2ESA');
INSERT INTO arrival VALUES(41,'01M7HQKC84HSEN8ASMAJX5NTDC');
INSERT INTO arrival VALUES(42,'01M7SEAWG461YNZD1MPS5ZZ05A');
INSERT INTO arrival VALUES(43,'01M7W07454RDH2F3XQ13M23G9E');
INSERT INTO arrival VALUES(44,'01M8F5S390QH9XFA9RD7YGC1W0');
INSERT INTO arrival VALUES(45,'01M8FGPEGS91HGSFKZ4XQR2DKR');
INSERT INTO arrival VALUES(46,'01M8FGPEHDV1WF4CJ8Z1VCT35Y');
INSERT INTO arrival VALUES(47,'01M8FGPEJN9YMC4EYA5K4KWNQ5');
INSERT INTO arrival VALUES(48,'01M8FGPEM0KS0H5Y21C0R6Y9EC');
INSERT INTO arrival VALUES(49,'01M8FGPEN0Q4MY7CXRWSYBFJTB');
INSERT INTO arrival VALUES(50,'01M8FGPEPEH2E92ZZF3Y0AVJRY');
INSERT INTO arrival VALUES(51,'01M8FTPY0JDTMZV7QBDZNGAM1F');
INSERT INTO arrival VALUES(52,'01M8FTPY0JJ2NMN5TBG16V9NKR');
INSERT INTO arrival VALUES(53,'01M8FTPY4KQHX76DJT6GVBJEMS');
INSERT INTO arrival VALUES(54,'01M8FTPY4M7JG6FG0TN36KYJ7F');
INSERT INTO arrival VALUES(55,'01M8FTPY85C1QGKG2VP68TCGM5');
CREATE TABLE photo (
    name TEXT NOT NULL PRIMARY KEY CHECK (length(name) = 64),
    jpeg BLOB NOT NULL
) STRICT;
INSERT INTO photo VALUES('7531e0b8150fbead6a4b433dbe722e8ea08a56c718906a557069133312a2d469',X'ffd8ffe000104a46494600010200000100010000ffc00011080020003003011100021101031101ffdb0043000604040504040605050506060607090e0909080809120d0d0a0e1512161615121414171a211c17181f1914141d271d1f2223252525161c292c28242b21242524ffdb00430106060609080911090911241814182424242424242424242424242424242424242424242424242424242424242424242424242424242424242424242424242424ffc4001f0000010501010101010100000000000000000102030405060708090a0bffc400b5100002010303020403050504040000017d01020300041105122131410613516107227114328191a1082342b1c11552d1f02433627282090a161718191a25262728292a3435363738393a434445464748494a535455565758595a636465666768696a737475767778797a838485868788898a92939495969798999aa2a3a4a5a6a7a8a9aab2b3b4b5b6b7b8b9bac2c3c4c5c6c7c8c9cad2d3d4d5d6d7d8d9dae1e2e3e4e5e6e7e8e9eaf1f2f3f4f5f6f7f8f9faffc4001f0100030101010101010101010000000000000102030405060708090a0bffc400b51100020102040403040705040400010277000102031104052131061241510761711322328108144291a1b1c109233352f0156272d10a162434e125f11718191a262728292a35363738393a434445464748494a535455565758595a636465666768696a737475767778797a82838485868788898a92939495969798999aa2a3a4a5a6a7a8a9aab2b3b4b5b6b7b8b9bac2c3c4c5c6c7c8c9cad2d3d4d5d6d7d8d9dae2e3e4e5e6e7e8e9eaf2f3f4f5f6f7f8f9faffda000c03010002110311003f00f3faf5ce60a002800a002800a002800a002800a002800a002800a002800a002800a002800a002800a002800a00ffd9');
INSERT INTO photo VALUES('05e76b15ce904d6c8a95bb6be1dd7cb76e4143b39a994d0b26f9ed8a0ee415b8',X'ffd8ffe000104a46494600010200000100010000ffc00011080020003003011100021101031101ffdb004300080606070605080707070909080a0c140d0c0b0b0c1912130f141d1a1f1e1d1a1c1c20242e2720222c231c1c2837292c30313434341f27393d38323c2e333432ffdb0043010909090c0b0c180d0d1832211c213232323232323232323232323232323232323232323232323232323232323232323232323232323232323232323232323232ffc4001f0000010501010101010100000000000000000102030405060708090a0bffc400b5100002010303020403050504040000017d01020300041105122131410613516107227114328191a1082342b1c11552d1f02433627282090a161718191a25262728292a3435363738393a434445464748494a535455565758595a636465666768696a737475767778797a838485868788898a92939495969798999aa2a3a4a5a6a7a8a9aab2b3b4b5b6b7b8b9bac2c3c4c5c6c7c8c9cad2d3d4d5d6d7d8d9dae1e2e3e4e5e6e7e8e9eaf1f2f3f4f5f6f7f8f9faffc4001f0100030101010101010101010000000000000102030405060708090a0bffc400b51100020102040403040705040400010277000102031104052131061241510761711322328108144291a1b1c109233352f0156272d10a162434e125f11718191a262728292a35363738393a434445464748494a535455565758595a636465666768696a737475767778797a82838485868788898a92939495969798999aa2a3a4a5a6a7a8a9aab2b3b4b5b6b7b8b9bac2c3c4c5c6c7c8c9cad2d3d4d5d6d7d8d9dae2e3e4e5e6e7e8e9eaf2f3f4f5f6f7f8f9faffda000c03010002110311003f00e3ebbcc42800a002800a002800a002800a002800a002800a002800a002800a002800a002800a002800a002803fffd9');
CREATE TABLE garment (
    id TEXT NOT NULL PRIMARY KEY REFERENCES entry (id),
    number INTEGER NOT NULL,
    name TEXT NOT NULL,
    due TEXT,
    done INTEGER,
    dropped INTEGER NOT NULL CHECK (dropped IN (0, 1)),
    body TEXT NOT NULL CHECK (json_valid(body))
) STRICT, WITHOUT ROWID;
INSERT INTO garment VALUES('01M8FGPEM0KS0H5Y21C0R6Y9EC',1,'Choir trousers A','2026-12-12',NULL,0,'{"id":"01M8FGPEM0KS0H5Y21C0R6Y9EC","number":1,"name":"Choir trousers A","pattern":"01M77E2AV4AD2XP7TFTXE064YN","view":"A","uses":[{"role":"01M77E45E4JNFSFWNJGMP3CTSW","fabric":"01M3EBE9N4QDWD0ND8GJXPJ5WS"}],"whom":"the tenor","by":"2026-12-12","note":"","done":null,"dropped":false}');
CREATE TABLE setting (
    name TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL,
    entry TEXT NOT NULL REFERENCES entry (id)
) STRICT, WITHOUT ROWID;
INSERT INTO setting VALUES('units','cm','01M8FGPEPEH2E92ZZF3Y0AVJRY');
CREATE TABLE person (
    id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    same_as TEXT
) STRICT, WITHOUT ROWID;
INSERT INTO person VALUES('01M8FTPY0JBTJAJ73SWSXGH0HX','Anna',NULL);
INSERT INTO person VALUES('01M8FTPY4KTYX84T9646NP7VTB','Ben','01M8FTPY0JBTJAJ73SWSXGH0HX');
CREATE TABLE hand (
    fabric TEXT NOT NULL REFERENCES fabric (id),
    pulled_by TEXT NOT NULL,
    hand_dof REAL NOT NULL,
    hand_sum REAL NOT NULL,
    session_dof REAL NOT NULL,
    session_sum REAL NOT NULL,
    PRIMARY KEY (fabric, pulled_by)
) STRICT, WITHOUT ROWID;
INSERT INTO hand VALUES('01M3EBE9N4QDWD0ND8GJXPJ5WS','',4.0,0.21457460769642289211,0.0,0.0);
INSERT INTO hand VALUES('01M3EBQEM41GSJPTVJYSW051E0','',0.0,0.0,0.0,0.0);
INSERT INTO hand VALUES('01M3EBQEM41GSJPTVJYSW051E0','01M8FTPY0JBTJAJ73SWSXGH0HX',4.0,0.7884017749597369562,0.0,0.0);
INSERT INTO hand VALUES('01M3EBV3T4C3NYPC602RBEWZTC','',2.0,0.0,0.0,0.0);
INSERT INTO hand VALUES('01M3EBYS04T39NE3GJHMJCXDZC','',4.0,0.16771393721004554389,0.0,0.0);
INSERT INTO hand VALUES('01M3EC48S4THN96G9T3XB6GQW6','',2.0,0.095030254144014114636,0.0,0.0);
INSERT INTO hand VALUES('01M3ECDDR4TTAMYPWM36F9D2AS','',2.0,0.21500577544785351435,0.0,0.0);
INSERT INTO hand VALUES('01M3ECH2Y4FFRKQMK34NAA7EWJ','',4.0,0.087578791219710877546,0.0,0.0);
INSERT INTO hand VALUES('01M3ECPJQ4V381008SFN5YH345','',6.0,1.3430289381097020307,0.61905568838119506835,3.7466885889915033658);
INSERT INTO hand VALUES('01M3ED1J94KQZ07RJTVHXVNJEA','',4.0,0.20516751197145605134,0.0,0.0);
INSERT INTO hand VALUES('01M5VMVF34GK80YDMM4AVBNSDJ','',1.0,0.16165159421945141104,0.0,0.0);
INSERT INTO hand VALUES('01M7HPGJZ4PD6VM204ZTYNYBTC','',2.0,0.1481762760890061592,0.0,0.0);
INSERT INTO hand VALUES('01M7HQFQ24PATNWWNQAQHS0W10','',4.0,0.11637681639022739998,0.0,0.0);
CREATE INDEX entry_subject ON entry (subject, id);
CREATE INDEX fabric_tag ON fabric (tag);
CREATE INDEX test_fabric ON test (fabric, grain, pulled, id);
CREATE INDEX test_inbox ON test (pulled) WHERE fabric IS NULL;
CREATE INDEX role_pattern ON role (pattern, id);
CREATE INDEX orphan_waits_for ON orphan (waits_for);
CREATE INDEX test_pulled_by ON test (pulled_by) WHERE pulled_by IS NOT NULL;
COMMIT;
