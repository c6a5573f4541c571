import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import loopwright.ApiClient;
import loopwright.ApiException;
import loopwright.api.CalculationsApi;
import loopwright.api.DrawingsApi;
import loopwright.api.ReferenceApi;
import loopwright.api.ServiceApi;
import loopwright.model.Barrier;
import loopwright.model.LoopSizingRequest;
import loopwright.model.Opening;
import loopwright.model.Problem;

/**
 * An estimator's program on the generated Java client. It asks the instance at INSTANCE every operation of the description, through the
 * generated classes: each kept request of the folder EXAMPLES must come back as its kept answer, and whatever has no kept answer as the
 * bytes that a plain request gets. `clients` generates the client, compiles and runs this.
 */
final class Consumer {
    static final String INSTANCE = System.getenv("INSTANCE");
    static final Path EXAMPLES = Path.of(System.getenv("EXAMPLES"));
    static final HttpClient PLAIN = HttpClient.newHttpClient();
    static final ApiClient CLIENT = new ApiClient();
    static final ObjectMapper MAPPER = new ObjectMapper();
    static final TreeMap<String, Integer> CALLS = new TreeMap<>();

    public static void main(String[] arguments) throws Exception {
        CLIENT.updateBaseUri(INSTANCE);
        firstQuestion();
        refusal();
        unchanged();
        JsonNode paths = MAPPER.readTree(Files.readString(Path.of(arguments[0]))).get("paths");
        var stated = new TreeSet<String>();
        for (var path : paths.properties()) {
            for (var operation : path.getValue().properties()) {
                stated.add(operation.getValue().get("operationId").asText());
                operation(path.getKey(), operation.getKey(), operation.getValue());
            }
        }
        same("the operations that were asked", new TreeSet<>(CALLS.keySet()), stated);
        int calls = CALLS.values().stream().mapToInt(Integer::intValue).sum();
        System.out.println("Consumer.java: " + calls + " calls of " + CALLS.size() + " operations are answered as the classes and the kept answers say");
    }

    /** The numbers of the README's first question, through typed fields. */
    static void firstQuestion() throws ApiException {
        var request = new LoopSizingRequest().opening(new Opening().width("24 ft").barrier(Barrier.SLIDE_GATE));
        var first = new CalculationsApi(CLIENT).sizeLoops(request).getLoops().get(0);
        same("its loop", first.getRole() + " " + first.getAlongTravel().getFt() + " x " + first.getAcrossLane().getFt(), "exit 6.0 x 20.0");
        same("its inductance", first.getElectrical().getTerminalInductanceUh(), 94.21);
    }

    static void refusal() throws Exception {
        var request = new LoopSizingRequest().opening(new Opening().width("7,200 mm").barrier(Barrier.SLIDE_GATE));
        // What a drawing takes besides its request may be left out.
        var asked = Map.of("size_loops", new Object[] {request}, "draw_plan", new Object[] {request, null, null, null});
        for (String operation : asked.keySet()) {
            try {
                ask(operation, asked.get(operation));
                throw new AssertionError(operation + " takes a comma that may be for thousands");
            } catch (ApiException refused) {
                Problem problem = CLIENT.getObjectMapper().readValue(refused.getResponseBody(), Problem.class);
                same("the problem", problem.getStatus() + " " + problem.getCode(), "422 validation_failed");
                var fault = problem.getErrors().get(0);
                same("the fault", fault.getPointer() + " " + fault.getCode(), "#/opening/width decimal_comma");
            }
        }
    }

    /** The entity tag of a table, sent again. */
    static void unchanged() throws Exception {
        var reference = new ReferenceApi(CLIENT);
        String tag = reference.listBarriersWithHttpInfo(null).getHeaders().get("etag").get(0);
        try {
            reference.listBarriers(tag);
            throw new AssertionError("a known table is sent again");
        } catch (ApiException unchanged) {
            same("the status", unchanged.getCode(), 304);
        }
    }

    /** Asks an operation all that there is to ask. */
    static void operation(String path, String method, JsonNode operation) throws Exception {
        String id = operation.get("operationId").asText();
        if (method.equals("post")) {
            for (var question : questions(path, operation).entrySet()) {
                // The body comes first; what the query may hold is left out.
                var arguments = new Object[1 + operation.path("parameters").size()];
                arguments[0] = question.getValue();
                Object answer = ask(id, arguments);
                Path kept = EXAMPLES.resolve(path.replace("/v1/", "")).resolve(question.getKey() + ".answer.json");
                compare(path + " " + question.getKey(), answer, Files.exists(kept) ? Files.readAllBytes(kept) : plain(path, question.getValue()));
            }
            return;
        }
        var values = new ArrayList<Object>();
        var query = new ArrayList<String>();
        String place = path;
        for (JsonNode parameter : operation.path("parameters")) {
            String value = exampleOf(parameter);
            values.add(value);
            if (parameter.get("in").asText().equals("path")) {
                place = place.replace("{" + parameter.get("name").asText() + "}", value);
            } else if (value != null) {
                query.add(parameter.get("name").asText() + "=" + java.net.URLEncoder.encode(value, "utf-8"));
            }
        }
        Object answer = ask(id, values.toArray());
        if (path.equals("/metrics")) {
            // It counts the very call.
            assert Files.readString(((File) answer).toPath()).endsWith("\n# EOF\n");
            return;
        }
        compare(path, answer, plain(query.isEmpty() ? place : place + "?" + String.join("&", query), null));
    }

    /** The value of a parameter: its example, or the first member of its list; none, where it may be left out. */
    static String exampleOf(JsonNode parameter) {
        JsonNode example = parameter.has("example") ? parameter.get("example") : parameter.at("/schema/enum/0");
        return example.isMissingNode() ? null : example.asText();
    }

    /** The questions of an operation: the kept ones of its folder, or those of the description. */
    static Map<String, JsonNode> questions(String path, JsonNode operation) throws Exception {
        var questions = new TreeMap<String, JsonNode>();
        Path folder = EXAMPLES.resolve(path.replace("/v1/", ""));
        if (Files.isDirectory(folder)) {
            try (var files = Files.newDirectoryStream(folder, "*.request.json")) {
                for (Path file : files) {
                    questions.put(file.getFileName().toString().replace(".request.json", ""), MAPPER.readTree(Files.readString(file)));
                }
            }
        }
        JsonNode content = operation.at("/requestBody/content/application~1json");
        if (questions.isEmpty()) {
            content.path("examples").properties().forEach(example -> questions.put(example.getKey(), example.getValue().get("value")));
        }
        if (content.has("example")) {
            questions.put("example", content.get("example"));
        }
        assert !questions.isEmpty() : path + " has no example";
        return questions;
    }

    /** Calls the generated method of an operation, and returns what it makes of the answer. A body becomes the class that it takes. */
    static Object ask(String id, Object[] arguments) throws Exception {
        String[] words = id.split("_");
        var name = new StringBuilder(words[0]);
        Arrays.stream(words).skip(1).forEach(word -> name.append(Character.toUpperCase(word.charAt(0))).append(word.substring(1)));
        for (Object api : List.of(new CalculationsApi(CLIENT), new DrawingsApi(CLIENT), new ReferenceApi(CLIENT), new ServiceApi(CLIENT))) {
            for (Method method : api.getClass().getMethods()) {
                if (!method.getName().contentEquals(name) || method.getParameterCount() != arguments.length) {
                    continue;
                }
                CALLS.merge(id, 1, Integer::sum);
                for (int index = 0; index < arguments.length; index++) {
                    if (arguments[index] instanceof JsonNode body) {
                        arguments[index] = CLIENT.getObjectMapper().treeToValue(body, method.getParameterTypes()[index]);
                    } else if (arguments[index] instanceof String text) {
                        arguments[index] = CLIENT.getObjectMapper().convertValue(text, method.getParameterTypes()[index]);
                    }
                }
                try {
                    return method.invoke(api, arguments);
                } catch (InvocationTargetException failed) {
                    throw (Exception) failed.getCause();
                }
            }
        }
        throw new AssertionError("the client has no method " + name + " of " + arguments.length + " arguments");
    }

    /** What a plain request gets, which must be no failure. */
    static byte[] plain(String path, JsonNode body) throws Exception {
        var request = HttpRequest.newBuilder(URI.create(INSTANCE + path));
        if (body != null) {
            request.header("content-type", "application/json").POST(HttpRequest.BodyPublishers.ofString(body.toString()));
        }
        var answer = PLAIN.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        same("the status of " + path, answer.statusCode(), 200);
        return answer.body();
    }

    /** A document must be the same bytes; a report, written again by the generated classes, the same values. They write a list that is absent as an empty one. */
    static void compare(String what, Object answer, byte[] wanted) throws Exception {
        if (answer instanceof File file) {
            assert wanted.length > 20;
            if (!Arrays.equals(Files.readAllBytes(file.toPath()), wanted)) {
                throw new AssertionError(what + ": the document is another");
            }
            Files.delete(file.toPath());
            return;
        }
        var differences = new ArrayList<String>();
        // As text, for a tree keeps the kinds of numbers apart.
        JsonNode found = MAPPER.readTree(CLIENT.getObjectMapper().writeValueAsString(answer));
        differences("#", found, MAPPER.readTree(wanted), differences);
        same(what, differences, List.of());
    }

    static void differences(String place, JsonNode one, JsonNode other, List<String> found) {
        if (one != null && other != null && one.isObject() && other.isObject()) {
            var names = new TreeSet<String>();
            one.fieldNames().forEachRemaining(names::add);
            other.fieldNames().forEachRemaining(names::add);
            names.forEach(name -> differences(place + "/" + name, one.get(name), other.get(name), found));
        } else if (one != null && other != null && one.isArray() && other.isArray() && one.size() == other.size()) {
            for (int index = 0; index < one.size(); index++) {
                differences(place + "/" + index, one.get(index), other.get(index), found);
            }
        } else if (one != null && other != null && one.isNumber() && other.isNumber() ? one.doubleValue() != other.doubleValue() : one == null || !one.equals(other)) {
            if (other != null || one == null || !one.isArray() || !one.isEmpty()) {
                found.add(place + " is " + one + " instead of " + other);
            }
        }
    }

    static void same(String what, Object one, Object other) {
        if (!one.equals(other)) {
            throw new AssertionError(what + ": " + one + " is not " + other);
        }
    }
}
