// The I2C bus between the chip and its devices, in time: nine bits a byte at the clock the firmware has set. The
// controller adds cycles of its own to the counts in its registers: one to the low, seven and the spike filter's to the
// high period (Synopsys DW_apb_i2c, from memory).
//
// A device has an `address` and start(reading) -> ack, write(byte) -> ack, read() -> byte, stop().

const IC_DATA_CMD = 0x10;
const IC_FS_SPKLEN = 0xa0;
const TX_ABRT = 1 << 6;
const BYTE = 9;
const START = 1;
const STOP = 1;
const READ = 1;

export class Bus {
  constructor(chip, devices) {
    this.devices = new Map(devices.map((device) => [device.address, device]));
    const i2c = chip.i2c[0];
    const alarm = chip.clock.createAlarm(() => this.next());
    const after = (bits, next) => {
      this.next = next;
      const cycles = i2c.sclLowPeriod + 1 + i2c.sclHighPeriod + 7 + i2c.spikelen;
      alarm.schedule((bits * cycles * 1e9) / chip.clkSys);
    };
    let device;
    i2c.onStart = () => after(START, () => i2c.completeStart());
    i2c.onConnect = (address, mode) =>
      after(BYTE, () => {
        device = this.devices.get(address);
        const ack = device?.start(mode === READ) ?? false;
        if (!ack) device = undefined;
        i2c.completeConnect(ack);
      });
    i2c.onWriteByte = (byte) => after(BYTE, () => i2c.completeWrite(device?.write(byte) ?? false));
    i2c.onReadByte = () => after(BYTE, () => i2c.completeRead(device?.read() ?? 0xff));
    i2c.onStop = () =>
      after(STOP, () => {
        device?.stop();
        device = undefined;
        i2c.completeStop();
      });
    mendRegisters(i2c);
  }

  /** A transfer from outside that takes no time: what was read, or null when the device refused. */
  outside(address, write, count) {
    const device = this.devices.get(address);
    if (!device) return null;
    const read = [];
    let ack = write.length === 0 || (device.start(false) && write.every((byte) => device.write(byte)));
    if (ack && count > 0) {
      ack = device.start(true);
      while (ack && read.length < count) read.push(device.read());
    }
    if (ack) device.stop();
    return ack ? read : null;
  }
}

/**
 * After a refusal the chip throws away what is written to its FIFO until IC_CLR_TX_ABRT is read (the note on TX_ABRT in
 * rp2040-pac's ic_raw_intr_stat.rs); rp2040js would start a new transfer in the middle of the old one. And it takes
 * only even lengths of the spike filter.
 */
function mendRegisters(i2c) {
  const write = i2c.writeUint32.bind(i2c);
  i2c.writeUint32 = (offset, value) => {
    if (offset === IC_FS_SPKLEN) i2c.spikelen = value & 0xff;
    else if (offset !== IC_DATA_CMD || !(i2c.intRaw & TX_ABRT)) write(offset, value);
  };
}
