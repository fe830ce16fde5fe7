package io.github.tiderule.cases.difference;

import io.github.tiderule.cases.difference.program.Printed;
import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/**
 * The words on the sheets of paper for a cycle file. What reads them is the reader of such files
 * that the program brings along.
 */
final class PaperAnswers {

  private final Asked asked;
  private final Method load;
  private final Class<?> stripper;
  private final Method words;

  /**
   * @throws ReflectiveOperationException if the program brings no reader along
   */
  PaperAnswers(Asked asked) throws ReflectiveOperationException {
    this.asked = asked;
    ClassLoader classes = asked.program().classes();
    load = classes.loadClass("org.apache.pdfbox.Loader").getMethod("loadPDF", byte[].class);
    stripper = classes.loadClass("org.apache.pdfbox.text.PDFTextStripper");
    words = stripper.getMethod("getText", load.getReturnType());
  }

  /**
   * Writes the words of each sheet there is.
   *
   * @param name what the case is called
   * @throws IOException if an answer cannot be written
   * @throws ReflectiveOperationException if the program cannot be run
   */
  void write(String name, String cycle) throws IOException, ReflectiveOperationException {
    write("sheet/" + name, cycle, "advise", "--sheet");
    write("day-sheet/" + name, cycle, "advise", "--day-sheet");
    write("summary/" + name, cycle, "trace", "--summary");
  }

  private void write(String name, String cycle, String command, String option)
      throws IOException, ReflectiveOperationException {
    Path paper = asked.scratch().resolve("paper.pdf");
    Printed printed =
        asked.printed(cycle, asked.withProtocol(command, option, paper.toString(), Asked.INPUT));
    if (Files.exists(paper)) {
      asked.folder().write(name + ".txt", words(Files.readAllBytes(paper)));
      Files.delete(paper);
    } else {
      asked.folder().write(name + ".txt", printed.text());
    }
  }

  private String words(byte[] paper) throws IOException, ReflectiveOperationException {
    try (AutoCloseable document =
        (AutoCloseable) Objects.requireNonNull(load.invoke(null, (Object) paper))) {
      return (String)
          Objects.requireNonNull(words.invoke(stripper.getConstructor().newInstance(), document));
    } catch (IOException | ReflectiveOperationException | RuntimeException e) {
      throw e;
    } catch (Exception e) {
      throw new IOException(e);
    }
  }
}
