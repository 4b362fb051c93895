// A Raspberry Pi Pico class board with the handheld's display, EEPROM, keys and serial line, in simulated time.
//
//   node pico.mjs --modules FOLDER --image ELF --eeprom FILE [--cut-after-bytes N] [--without display,eeprom]
//
// FOLDER holds node_modules/rp2040js (npm install --prefix FOLDER rp2040js@1.4.1). FILE is the EEPROM's 32 KiB; it is
// made, all 0xFF as from the factory, when it is not there.
//
// One request a line on stdin, one answer a line on stdout, both JSON; the first line comes unasked. Time passes only
// in "run" and in "received" with "ms". It ends with "quit" or when stdin closes.
//
//   request                                       answer
//   -                                             {"ready":"rp2040js 1.4.1"}
//   {"do":"run","ms":10}                          {"ms":10,"stopped":null}   stopped: null, "cut" or "break"
//   {"do":"key","key":"next","down":true}         {}                         keys: less more next back select
//   {"do":"photo"}                                {"photo":"<1024 bytes>"}   8 rows of 128 columns, bit 0 on top
//   {"do":"send","hex":"00ff"}                    {"waiting":2}              arrives byte by byte at 115 200 baud
//   {"do":"received","ms":10}                     {"hex":"…","ms":20,"stopped":null}   waits for the first byte
//   {"do":"i2c","address":80,"write":"0000","read":1}   {"ack":true,"hex":"ff"}   from outside, takes no time
//   {"do":"cut","after_bytes":5}                  {}                         null takes it back
//   {"do":"display","reset":true}                 {}                         and "deaf": whether it does not answer
//   {"do":"stats"}                                {"ms":…,"asleep_ms":…,"wakes":…,…}
//   {"do":"quit"}                                 {}
//
// Anything wrong is answered by {"error":"…"}.

import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';

import { Board } from './pico/board.mjs';

const say = (answer) => process.stdout.write(`${JSON.stringify(answer)}\n`);
const hex = (bytes) => Buffer.from(bytes).toString('hex');
const bytes = (text) => {
  if (typeof text !== 'string' || !/^([0-9a-f]{2})*$/i.test(text)) throw new Error(`not hex: ${text}`);
  return Buffer.from(text, 'hex');
};

const requests = {
  run: (board, { ms }) => {
    board.run(ms);
    return { ms: board.ms, stopped: board.stopped };
  },
  key: (board, { key, down }) => {
    board.key(key, down);
    return {};
  },
  photo: (board) => ({ photo: hex(board.display.photo()) }),
  send: (board, request) => ({ waiting: board.line.send(bytes(request.hex)) }),
  received: (board, { ms = 0 }) => ({ hex: hex(board.received(ms)), ms: board.ms, stopped: board.stopped }),
  i2c: (board, { address, write = '', read = 0 }) => {
    const answer = board.bus.outside(address, bytes(write), read);
    return { ack: answer !== null, hex: hex(answer ?? []) };
  },
  cut: (board, request) => {
    board.eeprom.cutAfter = request.after_bytes ?? null;
    return {};
  },
  display: (board, { reset = false, deaf }) => {
    if (reset) board.display.reset();
    board.display.isDeaf = deaf ?? board.display.isDeaf;
    return {};
  },
  stats: (board) => board.stats(),
  quit: () => ({}),
};

function answer(board, line) {
  try {
    const request = JSON.parse(line);
    const carryOut = Object.hasOwn(requests, request.do) ? requests[request.do] : undefined;
    if (!carryOut) throw new Error(`unknown request ${line}`);
    return [carryOut(board, request), request.do === 'quit'];
  } catch (error) {
    return [{ error: String(error.message ?? error) }, false];
  }
}

try {
  const { values } = parseArgs({
    options: {
      modules: { type: 'string' },
      image: { type: 'string' },
      eeprom: { type: 'string' },
      'cut-after-bytes': { type: 'string' },
      without: { type: 'string', default: '' },
    },
  });
  for (const name of ['modules', 'image', 'eeprom']) {
    if (!values[name]) throw new Error(`--${name} is missing`);
  }
  const cut = values['cut-after-bytes'];
  const board = new Board({ ...values, cutAfter: cut === undefined ? null : Number(cut), without: values.without.split(',') });
  say({ ready: board.emulator });
  const input = createInterface({ input: process.stdin });
  input.on('line', (line) => {
    const [reply, last] = answer(board, line);
    say(reply);
    if (last) input.close();
  });
} catch (error) {
  say({ error: String(error.message ?? error) });
  process.exitCode = 1;
}
