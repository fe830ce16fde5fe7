package io.github.tiderule.api.command.stream;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** A file given on the command line; {@code -} is the standard input. */
public record Given(String name) {

  /** What is given for the standard input. */
  public static final String STANDARD_INPUT = "-";

  /** The file cannot be opened; the message is for people. */
  public static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;

    Unreadable(String message) {
      super(message);
    }
  }

  /** What it is called in messages. */
  public String words() {
    return name.equals(STANDARD_INPUT) ? "the standard input" : name;
  }

  /** Its bytes, from the first. To close them leaves the standard input open. */
  public InputStream open(Streams streams) throws Unreadable {
    if (name.equals(STANDARD_INPUT)) {
      return new FilterInputStream(streams.in()) {
        @Override
        public void close() {
          // the standard input is not ours to close
        }
      };
    }
    try {
      Path path = Path.of(name);
      if (Files.isDirectory(path)) {
        throw new Unreadable(name + " is a directory, not a file.");
      }
      return Files.newInputStream(path);
    } catch (NoSuchFileException e) {
      throw new Unreadable("There is no file " + name + ".");
    } catch (AccessDeniedException e) {
      throw new Unreadable(name + " may not be read.");
    } catch (InvalidPathException | IOException e) {
      throw new Unreadable(name + " cannot be read.");
    }
  }

  /** How many bytes it has; 0 where nobody knows before they are read. */
  public long size() {
    try {
      return name.equals(STANDARD_INPUT) ? 0 : Files.size(Path.of(name));
    } catch (InvalidPathException | IOException e) {
      return 0;
    }
  }

  /** Its first bytes, at most so many. */
  public byte[] bytes(Streams streams, int most) throws Unreadable {
    try (InputStream in = open(streams)) {
      return in.readNBytes(most);
    } catch (IOException e) {
      throw new Unreadable(words() + " cannot be read to its end.");
    }
  }
}
