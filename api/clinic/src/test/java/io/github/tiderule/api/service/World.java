package io.github.tiderule.api.service;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** One of everything a path can name, belonging to one keeper. */
final class World {

  private static final String FEMALE = "{\"name\": \"Secret of %s\"}";
  private static final String SEASON =
      """
      {"zone": "Europe/Vienna", "firstBlood": {"on": "2027-01-03", "certainty": "seen"}}\
      """;
  private static final String OBSERVATION =
      """
      {"id": "p1", "kind": "progesterone", "at": "2027-01-08T08:00:00+01:00", "value": 2.1,
       "unit": "ng/mL", "method": "clia", "laboratory": "A"}\
      """;

  private final Asker owner;
  private final Map<String, String> parts = new LinkedHashMap<>();

  private World(Asker owner) {
    this.owner = owner;
  }

  /** Makes one of everything. */
  static World of(Asker owner, String name) {
    World world = new World(owner);
    String female = owner.post("/v1/females", FEMALE.formatted(name)).mustBe(201).text("/key");
    String cycle = owner.post("/v1/females/" + female + "/cycles", SEASON).mustBe(201).text("/key");
    owner.post("/v1/cycles/" + cycle + "/observations", OBSERVATION).mustBe(201);
    String empty = owner.post("/v1/females/" + female + "/cycles", SEASON).mustBe(201).text("/key");
    String advice =
        owner.post("/v1/cycles/" + cycle + "/advice", "{}").mustBe(201).header("Location");
    String token =
        owner.post("/v1/tokens", "{\"label\": \"one of " + name + "\"}").mustBe(201).text("/key");
    world.parts.put("female", female);
    world.parts.put("cycle", cycle);
    world.parts.put("empty", empty);
    world.parts.put("observation", "p1");
    world.parts.put("advice", advice.replaceFirst(".*/", ""));
    world.parts.put("token", token);
    world.parts.put("schema", "cycle-1.schema.json");
    return world;
  }

  String part(String name) {
    String part = parts.get(name);
    if (part == null) {
      throw new AssertionError("the world has no " + name);
    }
    return part;
  }

  /** The keys only its owner should ever see. */
  Iterable<String> keys() {
    return parts.entrySet().stream()
        .filter(one -> one.getValue().length() == 26)
        .map(Map.Entry::getValue)
        .toList();
  }

  /** The path of an operation, in this world. */
  String path(Contract.Operation operation) {
    String path = operation.path();
    if (operation.id().equals("addObservation")) {
      // examples bring ids of their own, which must not be there yet
      path = path.replace("{cycle}", part("empty"));
    }
    for (Map.Entry<String, String> part : parts.entrySet()) {
      path = path.replace("{" + part.getKey() + "}", part.getValue());
    }
    return path;
  }

  /** Somebody ready to send an operation: with the present version, where one is needed. */
  Asker ready(Asker asker, Contract.Operation operation) {
    if (!operation.parameters().contains("ifMatch")) {
      return asker;
    }
    String read = path(operation).replaceFirst("/(sharing|corrections|retractions)$", "");
    return asker.with("If-Match", owner.get(read).mustBe(200).header("ETag"));
  }

  /** A body the operation takes, if it takes one. */
  static @Nullable String body(Contract.Operation operation) {
    return Contract.sent(operation).values().stream()
        .findFirst()
        .map(JsonNode::toString)
        .orElse(null);
  }
}
