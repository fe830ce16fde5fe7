package io.github.tiderule.api.service;

import io.github.tiderule.api.Main;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The program in a process of its own, serving. */
final class ProcessOfOurs implements AutoCloseable {

  private static final Pattern PORT = Pattern.compile("http://127\\.0\\.0\\.1:(\\d+);");

  private final Process process;
  private final int port;

  private ProcessOfOurs(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  /** Starts it and waits until it answers. */
  static ProcessOfOurs serve(Path data) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx256m", "-cp", System.getProperty("java.class.path")));
    command.addAll(
        List.of(Main.class.getName(), "serve", "--port", "0", "--data", data.toString()));
    File errors = data.resolveSibling(data.getFileName() + ".err").toFile();
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.appendTo(errors)).start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    Matcher matcher = PORT.matcher(String.valueOf(line));
    if (!matcher.find()) {
      process.destroyForcibly();
      throw new AssertionError("it did not begin to serve: " + line + ", see " + errors);
    }
    return new ProcessOfOurs(process, Integer.parseInt(matcher.group(1)));
  }

  Asker asker() {
    return new Asker(port, Map.of());
  }

  int port() {
    return port;
  }

  /** Ends it without a word, as a power cut would. */
  void kill() throws InterruptedException {
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
