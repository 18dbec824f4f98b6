package blindlap.phone;

import blindlap.fault.CanonicalJson;
import blindlap.session.day.PhoneRole;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A phone that says what it is told to, over a real socket. */
final class TestPhone {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  static final HttpClient HTTP =
      HttpClient.newBuilder()
          .version(HttpClient.Version.HTTP_1_1)
          .connectTimeout(Duration.ofSeconds(20))
          .build();

  /** An answer. */
  record Heard(int status, JsonNode body, HttpResponse<byte[]> whole) {}

  private final ServedDay served;
  final String client;
  private final PhoneRole role;
  String key = "";
  String run = "";
  long number;

  TestPhone(ServedDay served, String client, PhoneRole role) {
    this.served = served;
    this.client = client;
    this.role = role;
  }

  /** Comes with the code that is shown. */
  Heard hello() {
    return hello(served.server.link(role).orElseThrow().getFragment());
  }

  Heard hello(String token) {
    Heard heard =
        post(
            "/hello",
            CanonicalJson.text(Map.of("token", token, "client", client, "role", role.text())));
    if (heard.status() == 200) {
      key = heard.body().get("key").asText();
    }
    return heard;
  }

  Heard state() {
    Heard heard = get("/state?unsent=0");
    run = heard.body().path("run").asText(run);
    return heard;
  }

  /** Says the next thing, and is heard. */
  Heard say(String act, String... fields) {
    number++;
    return send(message(number, run, act, fields));
  }

  String message(long at, String ofRun, String act, @Nullable String... fields) {
    Map<String, @Nullable Object> said = new LinkedHashMap<>();
    said.put("do", act);
    for (int i = 0; i < fields.length; i += 2) {
      said.put(fields[i], fields[i + 1]);
    }
    String now = String.valueOf(served.day.clock().millis());
    return CanonicalJson.text(
        Map.of(
            "run",
            ofRun,
            "number",
            String.valueOf(at),
            "given",
            now,
            "sent",
            now,
            "offset",
            "0",
            "knew",
            "1",
            "unsent",
            "0",
            "act",
            said));
  }

  Heard send(String message) {
    return post("/send", message);
  }

  Heard get(String path) {
    return hear(request(path).GET().build());
  }

  Heard post(String path, String body) {
    return hear(
        request(path)
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build());
  }

  HttpRequest.Builder request(String path) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + served.port + path))
            .timeout(Duration.ofSeconds(60));
    return key.isEmpty() ? request : request.header("Authorization", "Bearer " + key);
  }

  static Heard hear(HttpRequest request) {
    try {
      HttpResponse<byte[]> answer = HTTP.send(request, HttpResponse.BodyHandlers.ofByteArray());
      boolean json =
          answer.headers().firstValue("Content-Type").orElse("").equals("application/json");
      JsonNode body = json ? MAPPER.readTree(answer.body()) : MAPPER.createObjectNode();
      return new Heard(answer.statusCode(), body, answer);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
