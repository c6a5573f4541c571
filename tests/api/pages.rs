//! The pages for people: the documentation, which needs no other host, and a page for each kind of problem.

use super::harness::{get, send, shared};
use reqwest::Method;

#[test]
fn docs_lead_to_the_page_with_the_slash() {
    let answer = get("/docs");
    assert_eq!((answer.status, answer.header("location")), (308, "docs/"));
    let answer = get("/docs/");
    assert_eq!(answer.status, 200);
    assert!(answer.header("content-type").starts_with("text/html"), "{}", answer.header("content-type"));
}

#[test]
fn the_documentation_may_load_and_call_this_service_alone() {
    for path in ["/docs/", "/docs/swagger-initializer.js"] {
        let answer = get(path);
        let policy = answer.header("content-security-policy");
        for part in ["default-src 'none'", "script-src 'self';", "connect-src 'self'", "frame-ancestors 'none'"] {
            assert!(policy.contains(part), "{path}: {policy}");
        }
    }
}

#[test]
fn the_documentation_page_is_made_of_this_service_alone() {
    let page = get("/docs/").body.as_str().unwrap().to_owned();
    let mut assets: Vec<_> = ["src=\"", "href=\""]
        .iter()
        .flat_map(|attribute| page.split(attribute).skip(1).map(|rest| rest.split('"').next().unwrap()))
        .collect();
    assets.sort_unstable();
    assets.dedup();
    let pages = ["../changes", "../openapi-compact.json", "../openapi.json", "guide"];
    assert!(pages.iter().all(|page| assets.contains(page)), "{assets:?}");
    assert_eq!(get("/changes").status, 200);
    assets.retain(|asset| !pages.contains(asset));
    assert!(assets.len() >= 5, "the page has lost its parts: {assets:?}");
    for asset in &assets {
        assert!(!asset.contains("//") && !asset.starts_with('/'), "{asset} may lie elsewhere");
        let answer = get(&format!("/docs/{asset}"));
        assert_eq!(answer.status, 200, "{asset}");
        let file = asset.split('?').next().unwrap();
        let (kind, content) = (answer.header("content-type"), file.rsplit('.').next().unwrap());
        let expected = match content {
            "css" => "text/css",
            "js" => "javascript",
            _ => "image/",
        };
        assert!(kind.contains(expected), "{asset} is {kind}");
    }
    let start = get("/docs/swagger-initializer.js").body.as_str().unwrap().to_owned();
    assert!(start.contains("\"../openapi-compact.json\""), "{start}");
    for text in [page, start] {
        assert!(!text.contains("http://") && !text.contains("https://"), "another host is named: {text}");
    }
}

#[test]
fn a_file_that_the_documentation_does_not_have_is_a_problem() {
    for path in ["/docs/nope.js", "/docs/a/b/c", "/docs/..%2fCargo.toml", "/docs/index.html/"] {
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
    let read = ["/docs/", "/docs/index.css", "/docs/guide", "/changes", "/problems/not-found"];
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
