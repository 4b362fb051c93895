// An SSD1306 of 128 × 64 on I2C, as on the usual module, which stands upright with commands A1 and C8.
//
// Command set after Solomon Systech's SSD1306 data sheet, from memory. Shown as a module would: nothing while the
// display is off or its charge pump is, and mirrored with the wrong A0/A1 or C0/C8. Contrast and scrolling are not shown.

const WIDTH = 128;
const PAGES = 8;
const ROWS = 64;

/** Bytes that follow a command. */
const ARGUMENTS = new Map([
  [0x20, 1], [0x21, 2], [0x22, 2], [0x26, 6], [0x27, 6], [0x29, 5], [0x2a, 5], [0x81, 1], [0x8d, 1], [0xa3, 2],
  [0xa8, 1], [0xd3, 1], [0xd5, 1], [0xd9, 1], [0xda, 1], [0xdb, 1],
]);
const HORIZONTAL = 0;
const VERTICAL = 1;

export class Display {
  constructor() {
    this.address = 0x3c;
    this.ram = new Uint8Array(WIDTH * PAGES).fill(0x5a); // what is in it at power-on is not defined
    this.bytes = 0;
    this.isDeaf = false;
    this.notes = new Set();
    this.command = [];
    this.on = false;
    this.pump = false;
    this.all = false;
    this.inverse = false;
    this.mirroredColumns = true;
    this.mirroredRows = true;
    this.startLine = 0;
    this.offset = 0;
    this.mode = 2;
    this.columns = [0, WIDTH - 1];
    this.pages = [0, PAGES - 1];
    this.column = 0;
    this.page = 0;
  }

  /** Its own reset line, or its supply, dips: what it was told is gone. */
  reset() {
    const { bytes, notes, isDeaf } = this;
    Object.assign(this, new Display(), { bytes, notes, isDeaf });
  }

  start() {
    this.control = null;
    return !this.isDeaf;
  }

  /** A control byte says what follows: bit 6 data or command, bit 7 one byte and then another control byte. */
  write(byte) {
    this.bytes += 1;
    if (this.control === null) {
      this.control = byte;
    } else {
      if (this.control & 0x40) this.data(byte);
      else this.commandByte(byte);
      if (this.control & 0x80) this.control = null;
    }
    return true;
  }

  /** The status: bit 6 while it is off. */
  read() {
    return this.on ? 0x03 : 0x43;
  }

  stop() {}

  data(byte) {
    this.ram[this.page * WIDTH + this.column] = byte;
    if (this.mode === VERTICAL) {
      if (this.page++ === this.pages[1]) {
        this.page = this.pages[0];
        this.column = this.column === this.columns[1] ? this.columns[0] : this.column + 1;
      }
    } else if (this.mode === HORIZONTAL) {
      if (this.column++ === this.columns[1]) {
        this.column = this.columns[0];
        this.page = this.page === this.pages[1] ? this.pages[0] : this.page + 1;
      }
    } else {
      this.column = (this.column + 1) % WIDTH;
    }
    this.page %= PAGES;
    this.column %= WIDTH;
  }

  commandByte(byte) {
    this.command.push(byte);
    const [code, ...given] = this.command;
    if (given.length === (ARGUMENTS.get(code) ?? 0)) {
      this.command = [];
      this.carryOut(code, given);
    }
  }

  carryOut(code, [a, b]) {
    if (code <= 0x0f) this.column = (this.column & 0xf0) | code;
    else if (code <= 0x1f) this.column = (this.column & 0x0f) | ((code & 0x07) << 4);
    else if (code === 0x20) this.mode = a & 3;
    else if (code === 0x21) {
      this.columns = [a & 0x7f, b & 0x7f];
      this.column = a & 0x7f;
    } else if (code === 0x22) {
      this.pages = [a & 7, b & 7];
      this.page = a & 7;
    } else if (code >= 0x40 && code <= 0x7f) this.startLine = code & 0x3f;
    else if (code === 0x8d) this.pump = (a & 0x04) !== 0;
    else if (code === 0xa0 || code === 0xa1) this.mirroredColumns = code === 0xa0;
    else if (code === 0xa4 || code === 0xa5) this.all = code === 0xa5;
    else if (code === 0xa6 || code === 0xa7) this.inverse = code === 0xa7;
    else if (code === 0xae || code === 0xaf) this.on = code === 0xaf;
    else if (code >= 0xb0 && code <= 0xb7) this.page = code & 7;
    else if (code === 0xc0 || code === 0xc8) this.mirroredRows = code === 0xc0;
    else if (code === 0xd3) this.offset = a & 0x3f;
    else if (!ARGUMENTS.has(code) && ![0x2e, 0x2f, 0xe3].includes(code)) {
      this.notes.add(`SSD1306: unknown command 0x${code.toString(16)}`);
    }
  }

  lit(x, y) {
    if (!this.on || !this.pump) return false;
    const column = this.mirroredColumns ? WIDTH - 1 - x : x;
    const row = ((this.mirroredRows ? ROWS - 1 - y : y) + this.startLine + this.offset) % ROWS;
    const set = ((this.ram[(row >> 3) * WIDTH + column] >> (row & 7)) & 1) === 1;
    return (this.all || set) !== this.inverse;
  }

  /** What a viewer sees, in the order of the display's own memory. */
  photo() {
    const picture = new Uint8Array(WIDTH * PAGES);
    for (let y = 0; y < ROWS; y++) {
      for (let x = 0; x < WIDTH; x++) {
        if (this.lit(x, y)) picture[(y >> 3) * WIDTH + x] |= 1 << (y & 7);
      }
    }
    return picture;
  }
}
