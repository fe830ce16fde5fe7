package io.github.tiderule.api.command;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStream;

/** Where a command reads from and writes to. Everything written is UTF-8, whatever the locale. */
public record Streams(InputStream in, OutputStream out, OutputStream err) {

  /** The streams of the process. */
  public static Streams ofProcess() {
    return new Streams(
        new FileInputStream(FileDescriptor.in),
        new FileOutputStream(FileDescriptor.out),
        new FileOutputStream(FileDescriptor.err));
  }
}
