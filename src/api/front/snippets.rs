//! What the front page shows to copy: its question in three languages, and how a page embeds the helper.

use crate::api::embed::{VERSION, integrity};
use crate::wording::Language;

/// Where callers reach the service, and whether they need a key.
pub struct Place {
    /// The address, without a slash at its end.
    pub address: String,
    /// Whether that is the address that all callers use, and not only where the instance listens.
    pub is_public: bool,
    /// Whether keys are on.
    pub needs_key: bool,
}

/// A program that asks: what stands before the request and after it, for the script of the page puts in another.
pub struct Snippet {
    /// Its language, for programs.
    pub name: &'static str,
    /// Its language, for people.
    pub title: &'static str,
    /// The text before the request.
    pub before: String,
    /// The request, as it is quoted there.
    pub request: String,
    /// The text after it.
    pub after: String,
}

impl Place {
    /// The question in each language. A key is read from the environment, for it must not stand in a program.
    pub fn questions(&self, request: &str, language: Language) -> [Snippet; 3] {
        let asked = format!("{}/v1/loop-sizing/summary?lang={}", self.address, language.tag());
        let key = |text: &'static str| if self.needs_key { text } else { "" };
        let curl = key(" \\\n  -H \"authorization: Bearer $LOOPWRIGHT_KEY\"");
        let script = key(", authorization: `Bearer ${process.env.LOOPWRIGHT_KEY}`");
        let (import, python) =
            (key("import os\n"), key(", \"authorization\": \"Bearer \" + os.environ[\"LOOPWRIGHT_KEY\"]"));
        let request = request.to_owned();
        [
            Snippet {
                name: "curl",
                title: "curl",
                before: format!("curl -s '{asked}' -H 'content-type: application/json'{curl} \\\n  -d '"),
                request: request.clone(),
                after: "'\n".to_owned(),
            },
            Snippet {
                name: "typescript",
                title: "TypeScript",
                before: "const request = ".to_owned(),
                request: request.clone(),
                after: format!(
                    ";\nconst answer = await fetch(\"{asked}\", {{\n  method: \"POST\",\n  headers: {{ \"content-type\": \
                     \"application/json\"{script} }},\n  body: JSON.stringify(request),\n}});\nconst summary = await \
                     answer.json();\nconsole.log(answer.ok ? summary.headline : summary.detail);\n"
                ),
            },
            Snippet {
                name: "python",
                title: "Python",
                before: format!("import json\n{import}import urllib.request\n\nrequest = r'''"),
                request,
                after: format!(
                    "'''\nheaders = {{\"content-type\": \"application/json\"{python}}}\nasked = \
                     urllib.request.Request(\"{asked}\", request.encode(), headers)\nwith urllib.request.urlopen(asked) as \
                     answer:\n    print(json.load(answer)[\"headline\"])\n"
                ),
            },
        ]
    }

    /// How a page embeds the helper of this release, pinned by its hash.
    pub fn embedding(&self, language: Language) -> String {
        let Self { address, needs_key, .. } = self;
        let key = if *needs_key { " publishable-key=\"…\"" } else { "" };
        format!(
            "<script type=\"module\" src=\"{address}/embed/{VERSION}/helper.js\"\n  integrity=\"{}\" crossorigin></script>\n\
             <loopwright-helper lang=\"{}\"{key}></loopwright-helper>\n",
            integrity(),
            language.tag()
        )
    }
}
