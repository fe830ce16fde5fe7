package io.github.tiderule.format.node;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.PrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Writes a tree as JSON, with numbers as they were written. Characters that do not show as
 * themselves are escaped.
 */
public final class NodeText {

  private static final JsonFactory JSON = new JsonFactory();

  private NodeText() {}

  /** The text of a value on one line, without a line feed. */
  public static String of(Node node) {
    return text(node, null);
  }

  /** The text of a value for people to read and change, with a line feed at its end. */
  public static String indented(Node node) {
    DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentArraysWith(indenter);
    printer.indentObjectsWith(indenter);
    return text(node, printer) + "\n";
  }

  private static String text(Node node, @Nullable PrettyPrinter printer) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = JSON.createGenerator(text)) {
      if (printer != null) {
        json.setPrettyPrinter(printer);
      }
      write(json, node);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return escaped(text.toString());
  }

  /** The same JSON text, with every character escaped that does not show as itself. */
  public static String escaped(String json) {
    if (Characters.visible(json).equals(json)) {
      return json;
    }
    StringBuilder escaped = new StringBuilder(json.length());
    json.codePoints()
        .forEach(
            character -> {
              // outside its texts, JSON as it is written here has no such character but line feeds
              if (character == '\n' || Characters.isSafe(character)) {
                escaped.appendCodePoint(character);
              } else {
                for (char unit : Character.toChars(character)) {
                  escaped.append(String.format(Locale.ROOT, "\\u%04X", (int) unit));
                }
              }
            });
    return escaped.toString();
  }

  private static void write(JsonGenerator json, Node node) throws IOException {
    if (node instanceof Node.Members members) {
      json.writeStartObject();
      for (Map.Entry<String, Node> member : members.byKey().entrySet()) {
        json.writeFieldName(member.getKey());
        write(json, member.getValue());
      }
      json.writeEndObject();
    } else if (node instanceof Node.Entries entries) {
      json.writeStartArray();
      for (Node entry : entries.all()) {
        write(json, entry);
      }
      json.writeEndArray();
    } else if (node instanceof Node.Text text) {
      json.writeString(text.value());
    } else if (node instanceof Node.Digits digits) {
      json.writeNumber(digits.written());
    } else if (node instanceof Node.Flag flag) {
      json.writeBoolean(flag.value());
    } else {
      json.writeNull();
    }
  }
}
