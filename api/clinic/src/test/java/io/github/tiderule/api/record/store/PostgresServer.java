package io.github.tiderule.api.record.store;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * A PostgreSQL server of the test's own, from the system's packages. Where there is none, tests are
 * left out, but not on a build server, which must have it.
 */
public final class PostgresServer implements AutoCloseable {

  private static final Path PACKAGES = Path.of("/usr/lib/postgresql");

  private final Path bin;
  private final Path directory;
  private final int port;
  private int databases;

  private PostgresServer(Path bin, Path directory, int port) {
    this.bin = bin;
    this.directory = directory;
    this.port = port;
  }

  /** Starts a server with nothing in it. */
  public static PostgresServer start() {
    Optional<Path> bin = programs();
    if (bin.isEmpty()) {
      boolean mustBeThere = "true".equals(System.getenv("CI"));
      if (mustBeThere) {
        throw new AssertionError("the build server lacks the package postgresql");
      }
      Assumptions.abort("no PostgreSQL server is installed here");
    }
    try {
      Path directory = Files.createTempDirectory("tiderule-postgres");
      Files.setPosixFilePermissions(directory, PosixFilePermissions.fromString("rwxrwxrwx"));
      PostgresServer server = new PostgresServer(bin.orElseThrow(), directory, freePort());
      server.run("initdb", "-D", server.data(), "-A", "trust", "-U", "tiderule", "-E", "UTF8");
      server.startAgain();
      return server;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<Path> programs() {
    if (!Files.isDirectory(PACKAGES)) {
      return Optional.empty();
    }
    try (Stream<Path> versions = Files.list(PACKAGES)) {
      return versions
          .map(version -> version.resolve("bin"))
          .filter(path -> Files.isExecutable(path.resolve("initdb")))
          .max(Comparator.naturalOrder());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private String data() {
    return directory.resolve("data").toString();
  }

  private void run(String program, String... arguments) {
    List<String> command = new ArrayList<>();
    if ("root".equals(System.getProperty("user.name"))) {
      // the server refuses to run as root; its package brings a user of its own
      command.addAll(List.of("runuser", "-u", "postgres", "--"));
    }
    command.add(bin.resolve(program).toString());
    command.addAll(List.of(arguments));
    File said = directory.resolve("said-" + program).toFile();
    try {
      Process process =
          new ProcessBuilder(command)
              .directory(directory.toFile())
              .redirectErrorStream(true)
              .redirectOutput(said)
              .start();
      if (process.waitFor() != 0) {
        throw new AssertionError(
            program + ": " + Files.readString(said.toPath(), StandardCharsets.UTF_8));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** A new database in it. */
  public Address database() {
    String name = "record" + databases++;
    run("createdb", "-h", "127.0.0.1", "-p", "" + port, "-U", "tiderule", name);
    return Address.of("jdbc:postgresql://127.0.0.1:" + port + "/" + name + "?user=tiderule");
  }

  /** Starts it after it was stopped. */
  public void startAgain() {
    run(
        "pg_ctl",
        "-D",
        data(),
        "-w",
        "-l",
        directory.resolve("log").toString(),
        "-o",
        "-p " + port + " -h 127.0.0.1 -k " + directory + " -c fsync=off",
        "start");
  }

  /** Stops it at once, in the middle of whatever it does. */
  public void stopAtOnce() {
    run("pg_ctl", "-D", data(), "-m", "immediate", "-w", "stop");
  }

  @Override
  public void close() {
    run("pg_ctl", "-D", data(), "-m", "fast", "-w", "stop");
  }
}
