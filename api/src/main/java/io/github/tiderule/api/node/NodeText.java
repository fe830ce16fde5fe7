package io.github.tiderule.api.node;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Map;

/** Writes a tree as JSON on one line, with numbers as they were written. */
public final class NodeText {

  private static final JsonFactory JSON = new JsonFactory();

  private NodeText() {}

  /** The text of a value, without a line feed. */
  public static String of(Node node) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = JSON.createGenerator(text)) {
      write(json, node);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
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
