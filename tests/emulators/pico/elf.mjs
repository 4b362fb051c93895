// Reads what a debug probe would load from a 32-bit little-endian ELF file.

import { readFileSync } from 'node:fs';

const LOAD = 1;

/** The loadable segments: `{ address, bytes, memoryAddress, memorySize }`; `address` is where the bytes are stored. */
export function segments(file) {
  const elf = readFileSync(file);
  if (elf.readUInt32BE(0) !== 0x7f454c46 || elf[4] !== 1 || elf[5] !== 1) {
    throw new Error(`${file} is not a 32-bit little-endian ELF file`);
  }
  const table = elf.readUInt32LE(28);
  const size = elf.readUInt16LE(42);
  const count = elf.readUInt16LE(44);
  return Array.from({ length: count }, (_, i) => table + i * size)
    .filter((at) => elf.readUInt32LE(at) === LOAD)
    .map((at) => {
      const offset = elf.readUInt32LE(at + 4);
      return {
        memoryAddress: elf.readUInt32LE(at + 8),
        address: elf.readUInt32LE(at + 12),
        bytes: elf.subarray(offset, offset + elf.readUInt32LE(at + 16)),
        memorySize: elf.readUInt32LE(at + 20),
      };
    });
}
