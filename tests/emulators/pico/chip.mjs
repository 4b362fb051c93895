// The RP2040 itself: rp2040js with the image in its flash, and with the few places put right where it differs from the
// chip in a way that this firmware could notice.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';

import { segments } from './elf.mjs';

const VERSION = '1.4.1';
const FLASH = 0x10000000;
const VECTORS = 0x10000100;
const RAM = 0x20000000;
const TIMER = 0x40054;
/** RAM starts with something in it, as on the chip; and the stack's depth can be seen. */
const UNTOUCHED = 0xa5;

/** `{ chip, name, stackBytes }` with the image loaded and the processor at its reset vector. */
export function startChip(modules, image) {
  const require = createRequire(join(resolve(modules), 'modules.js'));
  const found = JSON.parse(readFileSync(join(modules, 'node_modules/rp2040js/package.json'), 'utf8')).version;
  if (found !== VERSION) throw new Error(`rp2040js ${found} found, ${VERSION} wanted`);
  const { RP2040 } = require('rp2040js');

  const chip = new RP2040();
  chip.notes = new Set();
  chip.logger = quietLogger(chip.notes);
  letWaitingObeyPrimask(chip.core);
  makeAlarmsExact(chip);

  chip.sram.fill(UNTOUCHED);
  let ramEnd = RAM;
  for (const { address, bytes, memoryAddress, memorySize } of segments(image)) {
    if (address >= FLASH && bytes.length > 0) chip.flash.set(bytes, address - FLASH);
    if (memoryAddress >= RAM) ramEnd = Math.max(ramEnd, memoryAddress + memorySize);
  }
  chip.core.VTOR = VECTORS;
  chip.core.reset();
  const stackTop = chip.core.SP;

  const stackBytes = () => {
    const touched = chip.sram.findIndex((byte, i) => i >= ramEnd - RAM && byte !== UNTOUCHED);
    return touched < 0 ? 0 : stackTop - RAM - touched;
  };
  return { chip, name: `rp2040js ${found}`, stackBytes };
}

/** Keeps the first few different messages instead of printing thousands. */
function quietLogger(notes) {
  const note = (from, text) => notes.size < 50 && notes.add(`${from}: ${text}`);
  return {
    debug() {},
    info() {},
    warn: note,
    error(from, text) {
      note(from, text);
      throw new Error(`${from}: ${text}`);
    },
  };
}

/**
 * On the chip an interrupt that is held back by PRIMASK ends WFI but runs its handler only later, and WFI does not wait
 * when one is pending already (Armv6-M Architecture Reference Manual, WFI). rp2040js runs the handler in spite of
 * PRIMASK and sleeps on with one pending. `run` in board.mjs asks once more after every WFI.
 */
function letWaitingObeyPrimask(core) {
  const enter = core.checkForInterrupts.bind(core);
  core.checkForInterrupts = () =>
    core.waiting && core.PM ? (core.pendingInterrupts & core.enabledInterrupts) !== 0 : enter();
}

/** rp2040js lets an alarm fire up to 1 µs before the counter reaches it; here it fires as the counter does. */
function makeAlarmsExact(chip) {
  const timer = chip.peripherals[TIMER];
  const write = timer.writeUint32.bind(timer);
  timer.writeUint32 = (offset, value) => {
    write(offset, value);
    const alarm = offset >= 0x10 && offset <= 0x1c ? timer.alarms[(offset - 0x10) / 4] : undefined;
    if (alarm?.armed) {
      const now = Math.floor(chip.clock.nanos / 1000);
      alarm.clockAlarm.schedule((now + ((value - now) >>> 0)) * 1000 - chip.clock.nanos);
    }
  };
}
