//! Steps that a blank one of their kind would never lead to.

use super::chance::Chance;
use halfcase::job::json;
use halfcase::job::kinds::Work;

/// Work with numbers in it, of the kinds that ask little of a blank step.
pub fn stocked(chance: &mut Chance, kind: &str) -> Option<Work> {
    let shims = r#""shims":[{"thick":0.1,"count":4},{"thick":0.5,"count":2},{"thick":0.05,"count":3,"between":true}]"#;
    let all = match kind {
        "Select" => vec![
            format!(r#"{{"select":{{"places":[{{"name":"gap"}}],"allowance":-0.1,"tolerance":0.05,{shims}}}}}"#),
            format!(r#"{{"select":{{"by":"trial",{shims},"trial":{{"least":0.05,"most":0.15}}}}}}"#),
            r#"{"select":{"by":"range","places":[{"name":"depth"}],"rows":[{"least":0,"most":40,"thick":2.4,"code":"A"}]}}"#.to_owned(),
            r#"{"select":{"by":"code","codes":{"down":["A","B"],"across":["1","2"],"cells":[["x","y"],["z",""]]}}}"#.to_owned(),
        ],
        "Gauge" => [1, 2, 3, 4].map(|n| {
            format!(r#"{{"gauge":{{"least":0.03,"most":0.06,"worn":0.{n}1,"taper":0.0{n},"torque":"20 N·m"}}}}"#)
        })
        .to_vec(),
        "Check" => [
            r#"{"check":{"readings":[
                {"id":1,"name":"fork","unit":"mm","least":0.05,"most":0.15,"worn_most":0.3},
                {"id":2,"name":"pin","unit":"in","least":0.4990,"worn_least":0.4985},
                {"id":3,"name":"seal","unit":"°F","most":180}]}}"#,
            r#"{"check":{"readings":[
                {"id":1,"name":"hole","unit":"mm","least":10,"most":10.02},
                {"id":2,"name":"shaft","unit":"in","least":0.3935,"most":0.3940},
                {"id":3,"name":"fit","unit":"in","least":-0.0005,"most":0.0010,"worked":{"how":"fit","of":[1,2]}},
                {"id":4,"name":"mean","unit":"mm","most":10.01,"worked":{"how":"mean","of":[1,2]}}]}}"#,
            r#"{"check":{"readings":[
                {"id":1,"name":"face","unit":"in","most":0.002,"per":"inch"},
                {"id":2,"name":"rim","unit":"mm","most":0.05,"per":"millimetre","radius":80},
                {"id":3,"name":"off centre","unit":"in","most":0.001,"worked":{"how":"offset","of":[1]}}],
                "bores":[{"id":4,"name":"pin","shaft":true,"least_mm":34.98,"most_mm":35,"worn_least_mm":34.95}]}}"#,
            r#"{"check":{"readings":[{"id":1,"name":"teeth","unit":"","whole":true,"least":18,"most":18},
                {"id":2,"name":"balls","unit":"","whole":true,"least":3,"most":9}]}}"#,
            r#"{"check":{"readings":[{"id":1,"name":"drag","unit":"in·lb","least":2,"most":6}]}}"#,
            r#"{"check":{"readings":[
                {"id":1,"name":"tooth 1","unit":"mm"},{"id":2,"name":"tooth 9","unit":"thou"},
                {"id":3,"name":"pull","unit":"lb"},{"id":4,"name":"of the seal","unit":"N"},
                {"id":5,"name":"backlash","unit":"mm","least":0.1,"most":0.25,"worn_most":0.4,"worked":{"how":"calculation",
                    "calculation":"backlash","fed":[{"field":"place_1","reading":1},{"field":"place_2","reading":2},
                    {"field":"spread","number":0.05}]}},
                {"id":6,"name":"preload","unit":"in·lb","least":10,"most":20,"worked":{"how":"calculation",
                    "calculation":"preload","fed":[{"field":"pull","reading":3},{"field":"seal_pull","reading":4},
                    {"field":"radius","number":"1.20","unit":"in"}]}},
                {"id":7,"name":"engagement","unit":"mm","worked":{"how":"calculation","calculation":"engagement",
                    "fed":[{"field":"thread","word":"M8"},{"field":"bolt","number":30},{"field":"stack","reading":1}]}},
                {"id":8,"name":"of a later release","unit":"mm","worked":{"how":"calculation","calculation":"wobble",
                    "fed":[{"field":"here","reading":1}]}}]}}"#,
        ]
        .map(str::to_owned)
        .to_vec(),
        _ => return None,
    };
    json::read(chance.of(&all)?).ok()
}
