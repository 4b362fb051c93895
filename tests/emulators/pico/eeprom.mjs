// A 24C256: 32 KiB in pages of 64 bytes, kept in a file.
//
// After Microchip's data sheet of the AT24C128C/AT24C256C: a write latches up to a page, the lower six address bits
// roll over within it, the write cycle starts with the stop (§ 7.2), and the device does not acknowledge until it has
// ended (§ 7.3), which is 5 ms here, the longest that part may take. Reads run on through the whole memory and roll over
// at its end (§ 8).
//
// Power cut: `cutAfter` data bytes from now the bytes latched so far are in the memory, the rest of the page is as it
// was, and the machine stops. 0 stops it before the next data byte is taken.

import { closeSync, existsSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';

const SIZE = 32768;
const PAGE = 64;
const WRITE_CYCLE_NS = 5e6;

export class Eeprom {
  constructor(file, clock, onCut) {
    if (!existsSync(file)) writeFileSync(file, Buffer.alloc(SIZE, 0xff));
    this.memory = readFileSync(file);
    if (this.memory.length !== SIZE) throw new Error(`${file} has ${this.memory.length} bytes, ${SIZE} wanted`);
    this.address = 0x50;
    this.file = file;
    this.clock = clock;
    this.onCut = onCut;
    this.cutAfter = null;
    this.pointer = 0;
    this.latched = new Map();
    this.busyUntil = 0;
    this.bytes = 0;
    this.writes = 0;
    this.refused = 0;
  }

  start() {
    if (this.clock.nanos < this.busyUntil) {
      this.refused += 1;
      return false;
    }
    // A start in the place of a stop gives up the write.
    this.latched.clear();
    this.addressBytes = 0;
    return true;
  }

  write(byte) {
    if (this.addressBytes < 2) {
      this.pointer = ((this.pointer << 8) | byte) & (SIZE - 1);
      this.addressBytes += 1;
      return true;
    }
    if (this.cutAfter === 0) return this.cut();
    this.latched.set(this.pointer, byte);
    this.pointer = (this.pointer & ~(PAGE - 1)) | ((this.pointer + 1) & (PAGE - 1));
    this.bytes += 1;
    if (this.cutAfter !== null && --this.cutAfter === 0) return this.cut();
    return true;
  }

  read() {
    const byte = this.memory[this.pointer];
    this.pointer = (this.pointer + 1) & (SIZE - 1);
    return byte;
  }

  stop() {
    if (this.latched.size === 0) return;
    this.keep();
    this.writes += 1;
    this.busyUntil = this.clock.nanos + WRITE_CYCLE_NS;
  }

  cut() {
    this.keep();
    this.onCut();
    return false;
  }

  keep() {
    for (const [address, byte] of this.latched) this.memory[address] = byte;
    this.latched.clear();
    const file = openSync(this.file, 'r+');
    writeSync(file, this.memory, 0, SIZE, 0);
    closeSync(file);
  }
}
