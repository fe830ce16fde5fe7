package io.github.tiderule.format.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.rules.fact.Worded;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * One JSON document being written. Fields stand in the order they are written in. Characters that
 * do not show as themselves are escaped, since documents are looked at in terminals too.
 */
public final class Document {

  private static final JsonFactory JSON =
      JsonFactory.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();
  private static final DateTimeFormatter INSTANT =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX");

  private final JsonGenerator json;

  private Document(JsonGenerator json) {
    this.json = json;
  }

  /** The text of a document, with a line feed at its end. */
  public static String text(Layout layout, Consumer<Document> body) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = JSON.createGenerator(text)) {
      if (layout == Layout.INDENTED) {
        json.setPrettyPrinter(indenting());
      }
      json.writeStartObject();
      body.accept(new Document(json));
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return NodeText.escaped(text.append('\n').toString());
  }

  private static DefaultPrettyPrinter indenting() {
    DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter(
            Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                .withArrayEmptySeparator("")
                .withObjectEmptySeparator(""));
    printer.indentArraysWith(indenter);
    printer.indentObjectsWith(indenter);
    return printer;
  }

  private interface Step {
    void run() throws IOException;
  }

  private Document write(Step step) {
    try {
      step.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return this;
  }

  /** A text; null where there is none. */
  public Document text(String name, @Nullable String value) {
    return write(() -> json.writeStringField(name, value));
  }

  /** A word of an enumeration. */
  public Document word(String name, Worded value) {
    return text(name, value.word());
  }

  /** {@code true} or {@code false}. */
  public Document flag(String name, boolean value) {
    return write(() -> json.writeBooleanField(name, value));
  }

  /** A whole number. */
  public Document whole(String name, long value) {
    return write(() -> json.writeNumberField(name, value));
  }

  /** A number rounded to some decimals; null where there is none. */
  public Document figure(String name, @Nullable Double value, int decimals) {
    return value == null
        ? text(name, null)
        : write(() -> json.writeNumberField(name, Figures.rounded(value, decimals)));
  }

  /** A number with all its digits. */
  Document exact(String name, double value) {
    return figure(name, value, 9);
  }

  /** An instant with its offset; null where there is none. */
  public Document instant(String name, @Nullable OffsetDateTime value) {
    return text(name, value == null ? null : INSTANT.format(value));
  }

  /** A local day; null where there is none. */
  public Document day(String name, @Nullable LocalDate value) {
    return text(name, value == null ? null : value.toString());
  }

  /** A list of texts. */
  public Document texts(String name, List<String> values) {
    return write(
        () -> {
          json.writeArrayFieldStart(name);
          for (String value : values) {
            json.writeString(value);
          }
          json.writeEndArray();
        });
  }

  /** A list of words. */
  public Document words(String name, List<? extends Worded> values) {
    return texts(name, values.stream().map(Worded::word).toList());
  }

  /** A list of instants. */
  public Document instants(String name, List<OffsetDateTime> values) {
    return texts(name, values.stream().map(INSTANT::format).toList());
  }

  /** Numbers rounded to some decimals. */
  Document figures(String name, List<Double> values, int decimals) {
    return write(
        () -> {
          json.writeArrayFieldStart(name);
          for (double value : values) {
            json.writeNumber(Figures.rounded(value, decimals));
          }
          json.writeEndArray();
        });
  }

  /** An object within this one; null where there is none. */
  public <T> Document object(String name, @Nullable T value, Consumer<T> body) {
    if (value == null) {
      return text(name, null);
    }
    write(() -> json.writeObjectFieldStart(name));
    body.accept(value);
    return write(json::writeEndObject);
  }

  /** A list of objects. */
  public <T> Document objects(String name, List<T> values, Consumer<T> body) {
    write(() -> json.writeArrayFieldStart(name));
    for (T value : values) {
      write(json::writeStartObject);
      body.accept(value);
      write(json::writeEndObject);
    }
    return write(json::writeEndArray);
  }

  /**
   * A value that is JSON already.
   *
   * @param value JSON on one line; null where there is none
   */
  public Document raw(String name, @Nullable String value) {
    return write(
        () -> {
          json.writeFieldName(name);
          json.writeRawValue(value == null ? "null" : value);
        });
  }
}
