//! What the source of forecasts makes of the documents of a weather service, sound and unsound.

use loopwright::forecast::{ForecastError, HourlyForecast};
use serde_json::{Value, json};

use super::forecast_source::{ask, hasty, is_malformed, rows, source};
use super::weather_service::{Reply, WeatherService, hourly, periods};

/// The outcome of a document in the second step.
fn of_hourly(periods: Vec<Value>) -> Result<HourlyForecast, ForecastError> {
    let service = WeatherService::with_hourly(move || Reply::json(&hourly(periods.clone()), 0));
    ask(&source(&service, hasty()))
}

/// The usual periods with one of them changed.
fn changed(count: usize, index: usize, members: Value) -> Vec<Value> {
    let mut periods = periods(count);
    periods[index].as_object_mut().unwrap().extend(members.as_object().unwrap().clone());
    periods
}

#[test]
fn temperatures_come_in_the_units_of_the_service() {
    let celsius = |value: Value| json!({ "temperature": { "unitCode": "wmoUnit:degC", "value": value } });
    assert_eq!(rows(of_hourly(changed(1, 0, celsius(json!(-3.2)))))[0]["air"], "-3.2 °C");
    let plain = json!({ "temperature": 4, "temperatureUnit": "C" });
    assert_eq!(rows(of_hourly(changed(1, 0, plain)))[0]["air"], "4 °C");
}

#[test]
fn a_dew_point_stands_in_for_a_missing_humidity() {
    let row = &rows(of_hourly(changed(1, 0, json!({ "relativeHumidity": null }))))[0];
    assert_eq!((row.get("relative_humidity_percent"), &row["dew_point"]), (None, &json!("-1.11 °C")));
}

#[test]
fn hours_without_figures_are_left_out_as_long_as_the_gap_is_short() {
    let blank = |periods: &mut Vec<Value>, index: usize| {
        periods[index]["temperature"] = json!({ "unitCode": "wmoUnit:degC", "value": null });
    };
    let damp = |periods: &mut Vec<Value>, index: usize| {
        periods[index]["relativeHumidity"]["value"] = json!(null);
        periods[index]["dewpoint"]["value"] = json!(null);
    };
    let mut two = periods(10);
    blank(&mut two, 4);
    damp(&mut two, 5);
    let kept = rows(of_hourly(two.clone()));
    assert_eq!(kept.len(), 8);
    assert_eq!(kept[4]["time"], "2026-11-25T13:00:00-05:00");
    blank(&mut two, 6);
    assert!(is_malformed(&of_hourly(two)), "a gap of four hours is bridged");
    let mut none = periods(3);
    (0..3).for_each(|index| damp(&mut none, index));
    assert!(is_malformed(&of_hourly(none)));
}

#[test]
fn at_most_fourteen_days_are_taken() {
    assert_eq!(rows(of_hourly(periods(400))).len(), 336);
    // Every third hour alone.
    let sparse: Vec<_> = periods(400).into_iter().step_by(3).collect();
    assert_eq!(rows(of_hourly(sparse)).last().unwrap()["time"], "2026-12-09T04:00:00-05:00");
}

#[test]
fn a_forecast_with_something_wrong_in_it_is_no_forecast() {
    let measure = |unit: &str, value: Value| json!({ "unitCode": unit, "value": value });
    let wrong = [
        json!({ "temperature": 34, "temperatureUnit": "R" }),
        json!({ "temperature": 34, "temperatureUnit": null }),
        json!({ "temperature": "34 F" }),
        json!({ "temperature": 400 }),
        json!({ "temperature": measure("wmoUnit:Pa", json!(3)) }),
        json!({ "temperature": { "value": 3 } }),
        json!({ "relativeHumidity": measure("wmoUnit:degC", json!(3)) }),
        json!({ "relativeHumidity": measure("wmoUnit:percent", json!(180)) }),
        json!({ "relativeHumidity": measure("wmoUnit:percent", json!("80")) }),
        json!({ "relativeHumidity": 80 }),
        json!({ "relativeHumidity": null, "dewpoint": measure("wmoUnit:percent", json!(80)) }),
        json!({ "probabilityOfPrecipitation": measure("wmoUnit:mm", json!(2)) }),
        json!({ "probabilityOfPrecipitation": measure("wmoUnit:percent", json!(-1)) }),
        json!({ "startTime": null }),
        json!({ "startTime": "tomorrow" }),
        json!({ "startTime": "2026-11-25T08:00:00" }),
        json!({ "startTime": "2026-11-25T08:00:00-05:00[America/New_York]" }),
        json!({ "startTime": "2026-11-25T07:00:00-05:00" }),
        json!({ "startTime": "2026-11-25T04:00:00-05:00" }),
    ];
    for members in wrong {
        let outcome = of_hourly(changed(3, 1, members.clone()));
        assert!(is_malformed(&outcome), "{members} gives {outcome:?}");
    }
    assert!(is_malformed(&of_hourly(Vec::new())));
}

#[test]
fn what_is_no_document_of_the_service_is_malformed() {
    let bodies = ["", "{", "null", "[]", "{}", "<html/>", "{\"properties\":{}}", "{\"properties\":null}", "\u{feff}{}"];
    for body in bodies {
        let service = WeatherService::with_hourly(move || Reply::text(200, body));
        assert!(is_malformed(&ask(&source(&service, hasty()))), "second step: {body}");
        let service = WeatherService::start(move |_, _, _| Reply::text(200, body));
        assert!(is_malformed(&ask(&source(&service, hasty()))), "first step: {body}");
        assert_eq!(service.asked().len(), 1, "what is malformed is asked for again: {body}");
    }
    let service =
        WeatherService::with_hourly(|| Reply { body: b"{\"properties\": \"\xff\"}".to_vec(), ..Reply::text(200, "") });
    assert!(is_malformed(&ask(&source(&service, hasty()))));
}
