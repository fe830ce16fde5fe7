package io.github.tiderule.api.command;

import java.io.InputStream;

/** The same bytes again and again, without holding them all. Counts the bytes it has given out. */
final class RepeatedInput extends InputStream {

  private final byte[] bytes;
  private final long size;
  private long at;

  RepeatedInput(byte[] bytes, int times) {
    this.bytes = bytes.clone();
    this.size = (long) bytes.length * times;
  }

  /** How often the bytes have been given out in full. */
  synchronized long timesRead() {
    return at / bytes.length;
  }

  @Override
  public synchronized int read() {
    return at == size ? -1 : bytes[(int) (at++ % bytes.length)];
  }

  @Override
  public synchronized int read(byte[] into, int offset, int length) {
    if (at == size) {
      return -1;
    }
    int count = (int) Math.min(length, size - at);
    for (int i = 0; i < count; i++) {
      into[offset + i] = bytes[(int) (at++ % bytes.length)];
    }
    return count;
  }

  @Override
  public synchronized int available() {
    return (int) Math.min(Integer.MAX_VALUE, size - at);
  }
}
