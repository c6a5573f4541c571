// An estimator's program on the generated Go client. It asks the instance at INSTANCE every operation of the description, through the
// generated types: each kept request of the folder EXAMPLES must come back as its kept answer, and whatever has no kept answer as the
// bytes that a plain request gets. `clients` generates the client, compiles and runs this.
package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"reflect"
	"sort"
	"strings"

	loopwright "loopwright/client"
)

type object = map[string]interface{}

var (
	instance = os.Getenv("INSTANCE")
	examples = os.Getenv("EXAMPLES")
	client   *loopwright.APIClient
	asked    = map[string]int{}
)

func main() {
	configuration := loopwright.NewConfiguration()
	configuration.Servers = loopwright.ServerConfigurations{{URL: instance}}
	client = loopwright.NewAPIClient(configuration)
	firstQuestion()
	refusal()
	unchanged()
	var description struct {
		Paths map[string]map[string]object `json:"paths"`
	}
	must(json.Unmarshal(read(os.Args[1]), &description))
	stated := map[string]bool{}
	for path, operations := range description.Paths {
		for method, operation := range operations {
			stated[operation["operationId"].(string)] = true
			askOperation(path, method, operation)
		}
	}
	calls := 0
	for id, count := range asked {
		calls += count
		same("an operation of the description", stated[id], true)
	}
	same("how many operations were asked", len(asked), len(stated))
	fmt.Printf("consumer.go: %d calls of %d operations are answered as the types and the kept answers say\n", calls, len(asked))
}

// The numbers of the README's first question, through typed fields.
func firstQuestion() {
	opening := loopwright.NewOpening("24 ft", loopwright.BARRIER_SLIDE_GATE)
	request := loopwright.NewLoopSizingRequest(*opening)
	report, _, err := client.CalculationsAPI.SizeLoops(context.Background()).LoopSizingRequest(*request).Execute()
	must(err)
	first := report.Loops[0]
	same("its loop", fmt.Sprint(first.Role, first.AlongTravel.Ft, first.AcrossLane.Ft, first.Turns), "exit6 20 2")
	same("its inductance", first.Electrical.TerminalInductanceUh, 94.21)
}

func refusal() {
	request := loopwright.NewLoopSizingRequest(*loopwright.NewOpening("7,200 mm", loopwright.BARRIER_SLIDE_GATE))
	_, _, sizing := client.CalculationsAPI.SizeLoops(context.Background()).LoopSizingRequest(*request).Execute()
	_, _, drawing := client.DrawingsAPI.DrawPlan(context.Background()).LoopSizingRequest(*request).Execute()
	for _, err := range []error{sizing, drawing} {
		refused, is := err.(*loopwright.GenericOpenAPIError)
		same("a refusal", is, true)
		problem := refused.Model().(loopwright.Problem)
		same("the problem", fmt.Sprint(problem.Status, problem.Code), "422validation_failed")
		same("the fault", problem.Errors[0].Pointer+" "+problem.Errors[0].Code, "#/opening/width decimal_comma")
	}
}

// The entity tag of a table, sent again.
func unchanged() {
	_, answer, err := client.ReferenceAPI.ListBarriers(context.Background()).Execute()
	must(err)
	_, again, _ := client.ReferenceAPI.ListBarriers(context.Background()).IfNoneMatch(answer.Header.Get("etag")).Execute()
	same("the status", again.StatusCode, 304)
}

// Asks an operation all that there is to ask.
func askOperation(path, method string, operation object) {
	id := operation["operationId"].(string)
	if method == "post" {
		for name, question := range questions(path, operation) {
			answer := ask(id, nil, question)
			wanted, err := os.ReadFile(filepath.Join(examples, strings.TrimPrefix(path, "/v1/"), name+".answer.json"))
			if err != nil {
				wanted = plain(path, question)
			}
			compare(path+" "+name, answer, wanted)
		}
		return
	}
	parameters, _ := operation["parameters"].([]interface{})
	place, query, values := path, url.Values{}, map[string]string{}
	var inPath []string
	for _, parameter := range parameters {
		parameter := parameter.(object)
		name, value := parameter["name"].(string), exampleOf(parameter)
		if parameter["in"] == "path" {
			place = strings.ReplaceAll(place, "{"+name+"}", value)
			inPath = append(inPath, value)
		} else if value != "" {
			query.Set(name, value)
			values[name] = value
		}
	}
	answer := askWith(id, inPath, values, nil)
	if path == "/metrics" {
		// It counts the very call.
		same("the end of the counters", strings.HasSuffix(string(read(answer.(*os.File).Name())), "\n# EOF\n"), true)
		return
	}
	if len(query) > 0 {
		place += "?" + query.Encode()
	}
	compare(path, answer, plain(place, nil))
}

// The value of a parameter: its example, or the first member of its list; none, where it may be left out.
func exampleOf(parameter object) string {
	if example, is := parameter["example"]; is {
		return fmt.Sprint(example)
	}
	schema, _ := parameter["schema"].(object)
	if members, is := schema["enum"].([]interface{}); is {
		return members[0].(string)
	}
	return ""
}

// The questions of an operation: the kept ones of its folder, or those of the description.
func questions(path string, operation object) map[string][]byte {
	found := map[string][]byte{}
	files, _ := filepath.Glob(filepath.Join(examples, strings.TrimPrefix(path, "/v1/"), "*.request.json"))
	for _, file := range files {
		found[strings.TrimSuffix(filepath.Base(file), ".request.json")] = read(file)
	}
	content := operation["requestBody"].(object)["content"].(object)["application/json"].(object)
	if stated, is := content["examples"].(object); is && len(found) == 0 {
		for name, example := range stated {
			found[name] = text(example.(object)["value"])
		}
	}
	if example, is := content["example"]; is {
		found["example"] = text(example)
	}
	same("whether "+path+" has an example", len(found) > 0, true)
	return found
}

func ask(id string, inPath []string, body []byte) interface{} { return askWith(id, inPath, nil, body) }

// Calls the generated methods of an operation, and returns what they make of the answer. A body becomes the type that it takes.
func askWith(id string, inPath []string, values map[string]string, body []byte) interface{} {
	asked[id]++
	services := reflect.ValueOf(client).Elem()
	var begin reflect.Value
	for index := 0; index < services.NumField() && !begin.IsValid(); index++ {
		if services.Type().Field(index).IsExported() {
			begin = services.Field(index).MethodByName(camel(id, "_"))
		}
	}
	same("whether the client has "+id, begin.IsValid(), true)
	arguments := []reflect.Value{reflect.ValueOf(context.Background())}
	for _, value := range inPath {
		arguments = append(arguments, reflect.ValueOf(value))
	}
	request := begin.Call(arguments)[0]
	if body != nil {
		// The body is an object; all other parameters are texts.
		for index := 0; index < request.NumMethod(); index++ {
			set := request.Method(index)
			if set.Type().NumIn() == 1 && set.Type().In(0).Kind() == reflect.Struct {
				typed := reflect.New(set.Type().In(0))
				must(json.Unmarshal(body, typed.Interface()))
				request = set.Call([]reflect.Value{typed.Elem()})[0]
				break
			}
		}
	}
	for name, value := range values {
		set := request.MethodByName(camel(name, "-_"))
		typed := reflect.New(set.Type().In(0)).Elem()
		typed.SetString(value)
		request = set.Call([]reflect.Value{typed})[0]
	}
	results := request.MethodByName("Execute").Call(nil)
	if err, failed := results[2].Interface().(error); failed {
		fail(id + ": " + err.Error())
	}
	return results[0].Interface()
}

func camel(name, separators string) string {
	words := strings.FieldsFunc(name, func(letter rune) bool { return strings.ContainsRune(separators, letter) })
	for index, word := range words {
		words[index] = strings.ToUpper(word[:1]) + word[1:]
	}
	return strings.Join(words, "")
}

// What a plain request gets, which must be no failure.
func plain(path string, body []byte) []byte {
	var answer *http.Response
	var err error
	if body == nil {
		answer, err = http.Get(instance + path)
	} else {
		answer, err = http.Post(instance+path, "application/json", bytes.NewReader(body))
	}
	must(err)
	defer answer.Body.Close()
	same("the status of "+path, answer.StatusCode, 200)
	whole, err := io.ReadAll(answer.Body)
	must(err)
	return whole
}

// A document must be the same bytes; a report, written again by the generated types, the same values.
func compare(what string, answer interface{}, wanted []byte) {
	if document, is := answer.(*os.File); is {
		same(what, len(wanted) > 20 && bytes.Equal(read(document.Name()), wanted), true)
		must(os.Remove(document.Name()))
		return
	}
	var one, other interface{}
	must(json.Unmarshal(text(answer), &one))
	must(json.Unmarshal(wanted, &other))
	found := differences("#", one, other)
	same(what+": "+strings.Join(found, "; "), len(found), 0)
}

func differences(place string, one, other interface{}) []string {
	var found []string
	if left, is := one.(object); is {
		if right, is := other.(object); is {
			names := map[string]bool{}
			for name := range left {
				names[name] = true
			}
			for name := range right {
				names[name] = true
			}
			for name := range names {
				found = append(found, differences(place+"/"+name, left[name], right[name])...)
			}
			sort.Strings(found)
			return found
		}
	}
	if left, is := one.([]interface{}); is {
		if right, is := other.([]interface{}); is && len(left) == len(right) {
			for index := range left {
				found = append(found, differences(fmt.Sprint(place, "/", index), left[index], right[index])...)
			}
			return found
		}
	}
	if !reflect.DeepEqual(one, other) {
		found = append(found, fmt.Sprint(place, " is ", one, " instead of ", other))
	}
	return found
}

func text(value interface{}) []byte {
	written, err := json.Marshal(value)
	must(err)
	return written
}

func read(file string) []byte {
	whole, err := os.ReadFile(file)
	must(err)
	return whole
}

func same(what string, one, other interface{}) {
	if one != other {
		fail(fmt.Sprintf("%s: %v is not %v", what, one, other))
	}
}

func must(err error) {
	if err != nil {
		fail(err.Error())
	}
}

func fail(why string) {
	fmt.Fprintln(os.Stderr, "consumer.go: "+why)
	os.Exit(1)
}
