//! The pages for people: the documentation, which needs no other host, and a page for each kind of problem.

use super::harness::{description, get, send, shared};
use reqwest::Method;

#[test]
fn docs_lead_to_the_page_with_the_slash() {
    for (path, to) in [("/docs", "docs/"), ("/docs/try", "try/")] {
        let answer = get(path);
        assert_eq!((answer.status, answer.header("location")), (308, to), "{path}");
    }
    for path in ["/docs/", "/docs/index.html", "/docs/loop-sizing", "/docs/try/", "/docs/try/index.html"] {
        let answer = get(path);
        assert_eq!((answer.status, answer.header("content-type")), (200, "text/html; charset=utf-8"), "{path}");
    }
}

#[test]
fn the_documentation_may_load_and_call_this_service_alone() {
    for path in ["/docs/", "/docs/page.js", "/docs/loop-sizing", "/docs/try/", "/docs/try/swagger-initializer.js"] {
        let answer = get(path);
        let policy = answer.header("content-security-policy");
        for part in ["default-src 'none'", "script-src 'self';", "connect-src 'self'", "frame-ancestors 'none'"] {
            assert!(policy.contains(part), "{path}: {policy}");
        }
        // The library of the viewer writes styles into its elements.
        assert_eq!(policy.contains("unsafe"), path.starts_with("/docs/try/"), "{path}: {policy}");
    }
    for path in ["/docs/", "/docs/loop-sizing", "/docs/drawings-plan"] {
        let page = get(path).body.as_str().unwrap().to_owned();
        let scripts = page.matches("<script").count();
        assert_eq!((scripts, page.matches("<script defer src=\"page.js").count()), (1, 1), "{path}");
        assert!(
            !page.contains("<style") && !page.contains(" style=") && !page.contains(" onclick"),
            "{path} has what its policy refuses"
        );
    }
}

/// What a page loads or leads to by an attribute, each once.
fn addresses(page: &str) -> Vec<String> {
    let of =
        |attribute| page.split(attribute).skip(1).map(|rest| rest.split('"').next().unwrap().replace("&amp;", "&"));
    let mut addresses: Vec<_> = [" src=\"", " href=\""].into_iter().flat_map(of).collect();
    addresses.sort_unstable();
    addresses.dedup();
    addresses
}

#[test]
fn the_documentation_is_made_of_this_service_alone_and_leads_nowhere_else() {
    let mut seen = 0;
    for folder in ["/docs/", "/docs/try/"] {
        let page = get(folder).body.as_str().unwrap().to_owned();
        for address in addresses(&page) {
            assert!(!address.contains("//") && !address.starts_with('/'), "{address} may lie elsewhere");
            if let Some(anchor) = address.strip_prefix('#') {
                assert!(page.contains(&format!("id=\"{anchor}\"")), "{address} leads nowhere");
                continue;
            }
            let path = match address.strip_prefix("../") {
                Some("") => "/docs/".to_owned(),
                Some(up) if folder == "/docs/" => format!("/{up}"),
                Some(up) => up.strip_prefix("../").map_or_else(|| format!("/docs/{up}"), |up| format!("/{up}")),
                None => format!("{folder}{address}"),
            };
            let answer = get(&path);
            assert_eq!(answer.status, 200, "{path}");
            let kind = answer.header("content-type");
            let expected = match path.split('?').next().unwrap().rsplit('.').next().unwrap() {
                "css" => "text/css",
                "js" => "text/javascript",
                "svg" => "image/svg+xml",
                "json" => "application/json",
                _ => "text/html; charset=utf-8",
            };
            assert_eq!(kind, expected, "{path}");
            seen += 1;
        }
        assert!(!page.contains("http://") && !page.contains("https://"), "{folder} names another host");
    }
    assert!(seen > 80, "the pages have lost their parts: {seen}");
    let start = get("/docs/try/swagger-initializer.js").body.as_str().unwrap().to_owned();
    assert!(start.contains("\"../../openapi-compact.json\""), "{start}");
    for text in [start, get("/docs/page.js").body.as_str().unwrap().to_owned()] {
        assert!(!text.contains("http://") && !text.contains("https://"), "another host is named: {text}");
    }
}

#[test]
fn every_operation_has_a_page_with_its_fields_its_example_its_answer_and_its_statuses() {
    let list = get("/docs/").body.as_str().unwrap().to_owned();
    let entries = list.split("<details id=\"").skip(1);
    let entries: Vec<_> = entries.map(|rest| rest.split('"').next().unwrap().to_owned()).collect();
    let operations = description()["paths"].as_object().unwrap().iter();
    let operations = operations.flat_map(|(path, item)| {
        item.as_object().unwrap().iter().map(move |(method, operation)| (method, path, operation))
    });
    let operations: Vec<_> = operations.collect();
    assert_eq!(entries.len(), operations.len());
    for (method, path, operation) in operations {
        let text = |name: &str| operation[name].as_str().unwrap();
        let named = format!("<b>{}</b> <code>{path}</code>", method.to_uppercase());
        let entry = list.split("<details id=\"").skip(1).find(|entry| entry.contains(&named));
        let anchor = entry.unwrap_or_else(|| panic!("{named} is not listed")).split('"').next().unwrap();
        let page = get(&format!("/docs/{anchor}"));
        assert_eq!(page.status, 200, "{anchor}");
        let page = page.body.as_str().unwrap();
        assert!(page.contains(&named) && page.contains(text("summary")), "{anchor}");
        let viewer = format!("href=\"try/#/{}/{}\"", operation["tags"][0].as_str().unwrap(), text("operationId"));
        assert!(page.contains(&viewer), "{anchor} has no {viewer}");
        for address in addresses(page).iter().filter_map(|address| address.strip_prefix('#')) {
            assert!(page.contains(&format!("id=\"{address}\"")), "{anchor}: {address} leads nowhere");
        }
        for status in operation["responses"].as_object().unwrap().keys() {
            assert!(page.contains(&format!("<th scope=\"row\">{status}</th>")), "{anchor} has no {status}");
        }
        let body = &operation["requestBody"]["content"]["application/json"];
        if let Some(schema) = body["schema"]["$ref"].as_str() {
            let schema = schema.rsplit('/').next().unwrap();
            assert!(page.contains(&format!("<h4 id=\"{anchor}.{schema}\">")), "{anchor} has no fields of {schema}");
            for field in description()["components"]["schemas"][schema]["properties"].as_object().unwrap().keys() {
                assert!(page.contains(&format!("<th scope=\"row\"><code>{field}</code>")), "{anchor} has no {field}");
            }
            assert!(
                page.contains(&format!("POST {path}\ncontent-type: application/json\n\n{{")),
                "{anchor} has no example"
            );
        }
    }
    let sizing = get("/docs/loop-sizing").body.as_str().unwrap().to_owned();
    for part in [
        "3 ft to 200 ft",
        "<code>7.2 m</code>",
        "<em>required</em>",
        "&quot;loops&quot;: [",
        "slide_gate</code>: A leaf",
    ] {
        assert!(sizing.contains(part), "the page of sizing has no {part}");
    }
}

#[test]
fn answers_that_are_no_json_are_shown_on_the_pages() {
    for (page, file, kind) in [
        ("drawings-plan", "drawings-plan.svg", "image/svg+xml"),
        ("drawings-plan-by-link", "drawings-plan-by-link.svg", "image/svg+xml"),
        ("drawings-cure-timeline", "drawings-cure-timeline.svg", "image/svg+xml"),
        ("installation-plan-job-sheet", "installation-plan-job-sheet.html", "text/html; charset=utf-8"),
        ("installation-plan-bill", "installation-plan-bill.csv", "text/csv; charset=utf-8"),
    ] {
        let shown = get(&format!("/docs/{page}")).body.as_str().unwrap().to_owned();
        assert!(shown.contains(&format!("href=\"{file}\"")), "{page} does not lead to {file}");
        assert_eq!(shown.contains(&format!("<img src=\"{file}\"")), kind == "image/svg+xml", "{page}");
        let answer = get(&format!("/docs/{file}"));
        assert_eq!((answer.status, answer.header("content-type")), (200, kind), "{file}");
    }
    // The picture of a link is what the link answers.
    let link = get("/docs/drawings-plan-by-link").body.as_str().unwrap().to_owned();
    let query = link.split("GET /v1/drawings/plan?").nth(1).unwrap().split('<').next().unwrap().replace("&amp;", "&");
    let drawn = get(&format!("/v1/drawings/plan?{query}"));
    assert_eq!(drawn.body, get("/docs/drawings-plan-by-link.svg").body);
}

#[test]
fn files_of_the_viewer_are_found_where_they_stood() {
    for name in ["swagger-ui.css", "swagger-ui-bundle.js", "swagger-initializer.js", "favicon-32x32.png"] {
        let answer = get(&format!("/docs/{name}"));
        assert_eq!((answer.status, answer.header("location")), (308, format!("try/{name}").as_str()));
        assert_eq!(get(&format!("/docs/try/{name}")).status, 200, "{name}");
    }
}

#[test]
fn a_file_that_the_documentation_does_not_have_is_a_problem() {
    for path in [
        "/docs/nope.js",
        "/docs/a/b/c",
        "/docs/..%2fCargo.toml",
        "/docs/index.html/",
        "/docs/try/nope.js",
        "/docs/try/index.css",
    ] {
        let answer = send(shared(), &Method::GET, path, &[]);
        assert_eq!(answer.status, 404, "{path}");
        assert_eq!(answer.body["code"], "not_found");
    }
}

#[test]
fn every_kind_of_problem_has_a_page_that_names_its_code() {
    let table = get("/v1/reference/problems").body;
    let rows = table["rows"].as_array().unwrap();
    let text = |row: &serde_json::Value, key: &str| row[key].as_str().unwrap().to_owned();
    let (answers, fields): (Vec<_>, Vec<_>) = rows.iter().partition(|row| row["applies_to"] == "answer");
    assert!(answers.len() >= 9 && fields.len() >= 15, "{} and {}", answers.len(), fields.len());
    for row in answers {
        let code = text(row, "code");
        let page = get(&format!("/problems/{}", code.replace('_', "-")));
        assert_eq!(page.status, 200, "{code}");
        assert_eq!(page.header("content-type"), "text/html; charset=utf-8");
        assert!(page.header("content-security-policy").starts_with("default-src 'none'"), "{code}");
        let html = page.body.as_str().unwrap();
        for part in [&format!("<code>{code}</code>"), &text(row, "label"), &row["status"].to_string()] {
            assert!(html.contains(part.as_str()), "the page of {code} does not name {part}");
        }
        assert!(!html.contains("http://") && !html.contains("https://"), "{code} names another host");
    }
    let page = get("/problems/validation-failed").body.as_str().unwrap().to_owned();
    for row in fields {
        let code = text(row, "code");
        assert!(page.contains(&format!("id=\"{code}\"")), "the page of refused fields has no anchor for {code}");
    }
}

#[test]
fn the_type_of_a_problem_leads_to_its_page() {
    let problems =
        [get("/nope"), send(shared(), &Method::PUT, "/health/live", &[]), super::harness::post("/v1/loop-sizing", "{")];
    for problem in problems {
        let page = get(problem.body["type"].as_str().unwrap());
        assert_eq!(page.status, 200);
        assert!(page.body.as_str().unwrap().contains(problem.body["code"].as_str().unwrap()));
    }
}

#[test]
fn a_kind_of_problem_that_does_not_exist_has_no_page() {
    for slug in ["nope", "not_found", "NOT-FOUND", "%3Cscript%3E"] {
        let answer = send(shared(), &Method::GET, &format!("/problems/{slug}"), &[]);
        assert_eq!(answer.status, 404, "{slug}");
        assert_eq!(answer.body["code"], "not_found");
    }
}

#[test]
fn no_document_sends_a_form_moves_its_base_or_is_shown_in_a_frame() {
    let answered = |path: &str, request: &str| {
        let answer = super::harness::post(path, request.to_owned());
        assert_eq!(answer.status, 200, "{path}: {}", answer.body);
        answer.header("content-security-policy").to_owned()
    };
    let sizing = include_str!("../../openapi/examples/loop-sizing/yard_gate.request.json");
    let plan = include_str!("../../openapi/examples/installation-plan/yard_gate_in_january.request.json");
    let drawn = [answered("/v1/drawings/plan", sizing), answered("/v1/installation-plan/job-sheet", plan)];
    let read = [
        "/docs/",
        "/docs/index.css",
        "/docs/loop-sizing",
        "/docs/try/",
        "/docs/guide",
        "/changes",
        "/problems/not-found",
    ];
    let read = read.map(|path| get(path).header("content-security-policy").to_owned());
    for policy in drawn.iter().chain(&read) {
        assert!(policy.starts_with("default-src 'none'; "), "{policy}");
        for part in ["base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'"] {
            assert!(policy.split("; ").any(|directive| directive == part), "{part} is not in {policy}");
        }
    }
}

#[test]
fn the_guide_and_the_changes_are_pages_whose_links_lead_somewhere() {
    for (path, words, others) in [
        ("/docs/guide", ["<h1 id=\"guide-for-integrators\">", "<table>", "id=\"generated-clients\""], "../changes"),
        ("/changes", ["<h1 id=\"changes-of-the-contract\">", "<h2 id=\"070\">", "<li>"], ""),
    ] {
        let page = get(path);
        assert_eq!((page.status, page.header("content-type")), (200, "text/html; charset=utf-8"), "{path}");
        let html = page.body.as_str().unwrap();
        for word in words {
            assert!(html.contains(word), "{path} has no {word}");
        }
        for link in html.split("<a href=\"").skip(1).map(|rest| rest.split('"').next().unwrap()) {
            let leads =
                link.strip_prefix('#').map_or(link == others, |anchor| html.contains(&format!("id=\"{anchor}\"")));
            assert!(leads, "{path}: {link} leads nowhere");
        }
    }
}
