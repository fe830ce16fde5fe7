package io.github.tiderule.api.fault;

import io.github.tiderule.api.Main;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The program in a process of its own, serving. */
final class ProcessOfOurs implements AutoCloseable {

  private static final Pattern PORT = Pattern.compile("http://127\\.0\\.0\\.1:(\\d+);");
  private static final Pattern RESIDENT = Pattern.compile("VmRSS:\\s+(\\d+) kB");
  private static final int KIB_PER_MIB = 1024;

  private final Process process;
  private final Client client;
  private volatile boolean killed;

  private ProcessOfOurs(Process process, int port) {
    this.process = process;
    this.client = new Client(port);
  }

  /**
   * Starts it and waits until it answers.
   *
   * @param data directory or database address of the record
   * @param errors where what it says of its faults is added
   */
  static ProcessOfOurs serve(String data, Path errors) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx256m", "-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(Main.class.getName(), "serve", "--port", "0", "--data", data));
    File said = errors.toFile();
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.appendTo(said)).start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    Matcher matcher = PORT.matcher(String.valueOf(line));
    if (!matcher.find()) {
      process.destroyForcibly();
      throw new AssertionError("it did not begin to serve: " + line + ", see " + said);
    }
    return new ProcessOfOurs(process, Integer.parseInt(matcher.group(1)));
  }

  Client client() {
    return client;
  }

  boolean isKilled() {
    return killed;
  }

  boolean isAlive() {
    return process.isAlive();
  }

  /** Memory it holds, in MiB; 0 where the system does not tell. */
  int residentMib() {
    Path status = Path.of("/proc/" + process.pid() + "/status");
    try {
      Matcher matcher = RESIDENT.matcher(Files.isReadable(status) ? Files.readString(status) : "");
      return matcher.find() ? Integer.parseInt(matcher.group(1)) / KIB_PER_MIB : 0;
    } catch (IOException e) {
      return 0;
    }
  }

  /** Ends it without a word, as a power cut would. */
  void kill() throws InterruptedException {
    killed = true;
    process.destroyForcibly();
    process.waitFor();
  }

  /** Asks it to stop, and waits until it has. */
  int stop() throws InterruptedException {
    process.destroy();
    if (!process.waitFor(60, TimeUnit.SECONDS)) {
      throw new AssertionError("it does not stop");
    }
    return process.exitValue();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
