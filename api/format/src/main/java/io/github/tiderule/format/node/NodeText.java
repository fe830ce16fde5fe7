package io.github.tiderule.format.node;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.PrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import io.github.tiderule.engine.validation.Legibility;
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
    StringBuilder escaped = new StringBuilder();
    int kept = 0;
    int next;
    for (int i = 0; i < json.length(); i = next) {
      next = i + 1;
      if (plain(json.charAt(i))) {
        continue;
      }
      int character = json.codePointAt(i);
      next = i + Character.charCount(character);
      if (!Legibility.isSafe(character)) {
        escaped.append(json, kept, i);
        for (char unit : Character.toChars(character)) {
          escaped.append(String.format(Locale.ROOT, "\\u%04X", (int) unit));
        }
        kept = next;
      }
    }
    return kept == 0 ? json : escaped.append(json, kept, json.length()).toString();
  }

  /**
   * Whether a character is seen at once to show as itself; of controls JSON has line feeds only.
   */
  private static boolean plain(char character) {
    return (character >= ' ' && character < 0x7F) || character == '\n';
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
