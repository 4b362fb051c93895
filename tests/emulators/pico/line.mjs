// The serial line on UART0, in time: ten bits a byte, FIFOs of 32 bytes each way, and the interrupts of the real UART
// (Arm PL011: at the chosen filling of the FIFO, or when bytes lie in it for 32 bit times).

const BAUD = 115200;
const NS_PER_BIT = 1e9 / BAUD;
const BITS = 10;
const FIFO = 32;

const DR = 0x00;
const RSR = 0x04;
const IFLS = 0x34;
const DMACR = 0x48;
const OVERRUN = 1 << 3;
const RX_FIFO_EMPTY = 1 << 4;
const TX_FIFO_FULL = 1 << 5;
const RX_FIFO_FULL = 1 << 6;
const TX_FIFO_EMPTY = 1 << 7;
const BUSY = 1 << 3;
const RX_INTERRUPT = 1 << 4;
const TIMEOUT_INTERRUPT = 1 << 6;
const TRIGGERS = [4, 8, 16, 24, 28];
/** 8 bits, FIFOs on, no parity, one stop bit. */
const FORMAT = 0x70;

export class Line {
  constructor(chip) {
    this.clock = chip.clock;
    this.uart = chip.uart[0];
    this.toChip = [];
    /** In the chip's transmit FIFO or, the first, in its shift register. */
    this.leaving = [];
    this.fromChip = [];
    this.lost = 0;
    this.overrun = 0;
    this.registers = new Map([[IFLS, 0x12], [DMACR, 0]]);
    this.arrival = this.clock.createAlarm(() => this.arrive());
    this.departure = this.clock.createAlarm(() => this.depart());
    this.timeout = this.clock.createAlarm(() => this.raise(TIMEOUT_INTERRUPT));
    this.replaceRegisters();
  }

  /** What the firmware has set. */
  get baud() {
    return this.uart.baudDivider ? this.uart.baudRate : 0;
  }

  /** Puts bytes on the line behind those that wait; how many wait now. */
  send(bytes) {
    const idle = this.toChip.length === 0;
    for (const byte of bytes) this.toChip.push(byte);
    if (idle && this.toChip.length > 0) this.arrival.schedule(BITS * NS_PER_BIT);
    return this.toChip.length;
  }

  arrive() {
    const { uart } = this;
    const byte = this.toChip.shift();
    if (this.toChip.length > 0) this.arrival.schedule(BITS * NS_PER_BIT);
    if (!uart.enabled || !uart.rxEnabled) {
      this.lost += 1;
      return;
    }
    // A receiver samples the middle of the tenth bit: half a bit in ten is where it goes wrong.
    if (Math.abs(this.baud / BAUD - 1) > 0.03 || (uart.lineCtrlRegister & 0x7f) !== FORMAT) {
      throw new Error(`line set to ${this.baud} baud, format 0x${uart.lineCtrlRegister.toString(16)}`);
    }
    if (uart.rxFIFO.full) {
      this.overrun = OVERRUN;
      this.lost += 1;
      return;
    }
    uart.rxFIFO.push(byte);
    this.settle();
  }

  /** The interrupts after the FIFO has changed. */
  settle() {
    const { uart } = this;
    const trigger = TRIGGERS[(this.registers.get(IFLS) >> 3) & 7] ?? FIFO;
    uart.interruptStatus &= ~(RX_INTERRUPT | (uart.rxFIFO.empty ? TIMEOUT_INTERRUPT : 0));
    if (uart.rxFIFO.itemCount >= trigger) uart.interruptStatus |= RX_INTERRUPT;
    if (uart.rxFIFO.empty) this.timeout.cancel();
    else this.timeout.schedule(32 * NS_PER_BIT);
    uart.checkInterrupts();
  }

  raise(interrupt) {
    this.uart.interruptStatus |= interrupt;
    this.uart.checkInterrupts();
  }

  transmit(byte) {
    if (this.leaving.length > FIFO) {
      this.lost += 1;
      return;
    }
    this.leaving.push(byte);
    if (this.leaving.length === 1) this.departNext();
  }

  departNext() {
    this.departure.schedule((BITS * 1e9) / this.uart.baudRate);
  }

  depart() {
    this.fromChip.push(this.leaving.shift());
    if (this.leaving.length > 0) this.departNext();
  }

  /** The bytes that have come out of the chip by now. */
  take() {
    return this.fromChip.splice(0);
  }

  /** rp2040js has no transmit FIFO, no receive trigger or timeout, and no error or trigger register. */
  replaceRegisters() {
    const { uart } = this;
    const read = uart.readUint32.bind(uart);
    const write = uart.writeUint32.bind(uart);
    uart.onByte = (byte) => this.transmit(byte);
    uart.readUint32 = (offset) => {
      if (offset === DR) {
        const byte = uart.rxFIFO.pull();
        this.settle();
        return byte;
      }
      if (offset === RSR) return this.overrun;
      return this.registers.get(offset) ?? read(offset);
    };
    uart.writeUint32 = (offset, value) => {
      if (offset === RSR) this.overrun = 0;
      else if (this.registers.has(offset)) this.registers.set(offset, value);
      else write(offset, value);
    };
    Object.defineProperty(uart, 'flags', {
      get: () => {
        const sending = this.leaving.length;
        return (
          (uart.rxFIFO.full ? RX_FIFO_FULL : 0) |
          (uart.rxFIFO.empty ? RX_FIFO_EMPTY : 0) |
          (sending > FIFO ? TX_FIFO_FULL : 0) |
          (sending <= 1 ? TX_FIFO_EMPTY : 0) |
          (sending > 0 ? BUSY : 0)
        );
      },
    });
  }
}
