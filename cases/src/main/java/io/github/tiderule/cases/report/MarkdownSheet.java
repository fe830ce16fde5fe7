package io.github.tiderule.cases.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A report in Markdown; plots are kept as files in its directory. */
final class MarkdownSheet implements Sheet {

  private final Path directory;
  private final StringBuilder out = new StringBuilder();

  MarkdownSheet(Path directory) {
    this.directory = directory;
  }

  @Override
  public void heading(int level, String text) {
    out.append(out.isEmpty() ? "" : "\n").append("#".repeat(level)).append(' ').append(text);
    out.append("\n\n");
  }

  @Override
  public void paragraph(String text) {
    out.append(text).append("\n\n");
  }

  @Override
  public void table(List<String> head, List<List<String>> rows) {
    row(head);
    out.append("|---".repeat(head.size())).append("|\n");
    rows.forEach(this::row);
    out.append('\n');
  }

  private void row(List<String> cells) {
    cells.forEach(cell -> out.append("| ").append(cell.replace("|", "\\|")).append(' '));
    out.append("|\n");
  }

  @Override
  public void plot(String file, String svg, String caption) {
    try {
      Files.writeString(directory.resolve(file), svg);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    out.append("![").append(caption).append("](").append(file).append(")\n\n");
  }

  @Override
  public String text() {
    return out.toString().stripTrailing() + "\n";
  }
}
