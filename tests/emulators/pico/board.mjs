// The board: the chip with its display, EEPROM, keys and line, and the passing of simulated time.

import { Bus } from './bus.mjs';
import { startChip } from './chip.mjs';
import { Display } from './display.mjs';
import { Eeprom } from './eeprom.mjs';
import { Line } from './line.mjs';

const NS_PER_MS = 1e6;
/** GPIO numbers; the table in firmware/boards/pico/src/main.rs is the other end. */
const KEYS = { less: 10, more: 11, next: 12, back: 13, select: 14 };
/** The encoder's contacts and button, open. */
const KNOB = [15, 16, 17];

export class Board {
  constructor({ modules, image, eeprom, cutAfter, without }) {
    const { chip, name, stackBytes } = startChip(modules, image);
    this.chip = chip;
    this.emulator = name;
    this.stackBytes = stackBytes;
    this.stopped = null;
    this.asleepNs = 0;
    this.instructions = 0;
    this.napping = false;
    this.wakes = 0;
    chip.onBreak = () => (this.stopped ??= 'break');

    this.display = new Display();
    this.eeprom = new Eeprom(eeprom, chip.clock, () => (this.stopped = 'cut'));
    this.eeprom.cutAfter = cutAfter;
    const devices = { display: this.display, eeprom: this.eeprom };
    this.bus = new Bus(chip, Object.keys(devices).filter((key) => !without.includes(key)).map((key) => devices[key]));
    this.line = new Line(chip);
    for (const pin of [...Object.values(KEYS), ...KNOB]) chip.gpio[pin].setInputValue(true);
  }

  get ms() {
    return this.chip.clock.nanos / NS_PER_MS;
  }

  key(name, down) {
    if (!Object.hasOwn(KEYS, name) || typeof down !== 'boolean') throw new Error(`no key "${name}", or down not given`);
    const pin = this.chip.gpio[KEYS[name]];
    // rp2040js makes an edge of every call.
    if (pin.rawInputValue === down) pin.setInputValue(!down);
  }

  /** Lets `ms` pass, or less if the machine stops or `enough()` holds. */
  run(ms, enough = () => false) {
    if (!(ms >= 0)) throw new Error(`cannot run ${ms} ms`);
    const { chip } = this;
    const { clock, core } = chip;
    const end = clock.nanos + ms * NS_PER_MS;
    // A hundredth of a nanosecond is below what the sums of times resolve.
    while (this.stopped === null && end - clock.nanos > 0.01 && !enough()) {
      if (!core.waiting) {
        if (this.napping) this.wakes += 1;
        this.napping = false;
        clock.tick((core.executeInstruction() * 1e9) / chip.clkSys);
        this.instructions += 1;
      } else if (core.checkForInterrupts()) {
        core.waiting = false;
      } else {
        const nap = Math.min(end - clock.nanos, clock.nextAlarm ? clock.nanosToNextAlarm : Infinity);
        this.napping = true;
        this.asleepNs += nap;
        clock.tick(nap);
      }
    }
  }

  /** What the board has sent; waits up to `ms` for the first byte. */
  received(ms) {
    this.run(ms, () => this.line.fromChip.length > 0);
    return this.line.take();
  }

  stats() {
    const { chip, line, eeprom, display } = this;
    return {
      ms: this.ms,
      asleep_ms: this.asleepNs / NS_PER_MS,
      wakes: this.wakes,
      instructions: this.instructions,
      clock_hz: chip.clkSys,
      baud: line.baud,
      line_lost: line.lost,
      eeprom_bytes: eeprom.bytes,
      eeprom_writes: eeprom.writes,
      eeprom_refused: eeprom.refused,
      display_bytes: display.bytes,
      stack_bytes: this.stackBytes(),
      stopped: this.stopped,
      notes: [...chip.notes, ...display.notes],
    };
  }
}
