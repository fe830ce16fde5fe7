package io.github.tiderule.format.node;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reads JSON text into a tree.
 *
 * <p>It takes {@code NaN} and the infinities as numbers, so that they are refused where they stand
 * and not as broken JSON. It descends at most {@value #DEEPEST} levels.
 */
public final class NodeReader {

  /** How deep a document may be nested. */
  static final int DEEPEST = 50;

  private static final JsonFactory JSON =
      JsonFactory.builder()
          .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
          .streamReadConstraints(
              StreamReadConstraints.builder().maxNestingDepth(DEEPEST).maxNumberLength(400).build())
          .build();

  private final JsonParser parser;
  private final Problems problems;

  private NodeReader(JsonParser parser, Problems problems) {
    this.parser = parser;
    this.problems = problems;
  }

  /** The tree of a text; empty, with a problem noted, when there is none. */
  public static Optional<Node> read(String json, Problems problems) {
    if (json.isBlank()) {
      problems.add(Pointer.ROOT, ProblemCode.EMPTY_FILE, "there is nothing in it");
      return Optional.empty();
    }
    try (JsonParser parser = JSON.createParser(json)) {
      return new NodeReader(parser, problems).document();
    } catch (StreamConstraintsException e) {
      boolean deep = e.getOriginalMessage().contains("nesting depth");
      problems.add(
          Pointer.ROOT,
          deep ? ProblemCode.TOO_DEEP : ProblemCode.TOO_LARGE,
          (deep
                  ? "it is nested deeper than " + DEEPEST + " levels"
                  : "a name or a number in it is far too long")
              + place(e.getLocation()));
      return Optional.empty();
    } catch (JsonParseException e) {
      problems.add(Pointer.ROOT, ProblemCode.NOT_JSON, "it is not JSON" + place(e.getLocation()));
      return Optional.empty();
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String place(@Nullable JsonLocation location) {
    return location == null
        ? ""
        : ": line " + location.getLineNr() + ", column " + location.getColumnNr();
  }

  private Optional<Node> document() throws IOException {
    parser.nextToken();
    Node node = value(Pointer.ROOT);
    JsonLocation end = parser.currentLocation();
    JsonToken next;
    try {
      next = parser.nextToken();
    } catch (JsonParseException e) {
      next = JsonToken.NOT_AVAILABLE;
    }
    if (next != null) {
      problems.add(
          Pointer.ROOT,
          ProblemCode.TRAILING_CONTENT,
          "more text follows the end of the document" + place(end));
      return Optional.empty();
    }
    return Optional.of(node);
  }

  private Node value(Pointer at) throws IOException {
    return switch (parser.currentToken()) {
      case START_OBJECT -> members(at);
      case START_ARRAY -> entries(at);
      case VALUE_STRING -> new Node.Text(parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new Node.Digits(parser.getText());
      case VALUE_TRUE -> new Node.Flag(true);
      case VALUE_FALSE -> new Node.Flag(false);
      case VALUE_NULL -> new Node.Nothing();
      default -> throw new IllegalStateException("no value begins with " + parser.currentToken());
    };
  }

  private Node members(Pointer at) throws IOException {
    Map<String, Node> byKey = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      Pointer place = at.child(key);
      parser.nextToken();
      Node value = value(place);
      if (byKey.putIfAbsent(key, value) != null) {
        problems.add(
            place,
            ProblemCode.DUPLICATE_KEY,
            "the key " + Shown.quoted(key) + " stands twice in the same object");
      }
    }
    return new Node.Members(byKey);
  }

  private Node entries(Pointer at) throws IOException {
    List<Node> all = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      all.add(value(at.child(all.size())));
    }
    return new Node.Entries(all);
  }
}
