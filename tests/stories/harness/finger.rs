//! Touching and typing.

use serde_json::{Value, json};

use super::page::Page;
use super::target::Target;
use super::tree::Tree;
use super::{Failure, Told};

/// Brings the thing on screen and says where its middle is, and whether a finger there meets it.
const WHERE: &str = "function () {
    const thing = this.nodeType === Node.ELEMENT_NODE ? this : this.parentElement;
    const meets = () => {
        const box = thing.getBoundingClientRect();
        const x = box.left + box.width / 2, y = box.top + box.height / 2;
        const top = document.elementFromPoint(x, y);
        const hit = !!top && (thing.contains(top) || (top.closest('label')?.contains(thing) ?? false));
        // A page wider than the screen is shown smaller; the finger is told where it is then.
        const view = window.visualViewport;
        return { x: (x - view.offsetLeft) * view.scale, y: (y - view.offsetTop) * view.scale, hit, over: top ? top.outerHTML.slice(0, 120) : 'nothing',
                 width: box.width, height: box.height };
    };
    for (const block of ['nearest', 'center', 'start', 'end']) {
        thing.scrollIntoView({ block, inline: 'nearest', behavior: 'instant' });
        const found = meets();
        if (found.hit) return found;
    }
    return meets();
}";

/// Where something is, in CSS pixels of the screen.
#[derive(Clone, Copy, Debug)]
pub struct Spot {
    pub x: f64,
    pub y: f64,
    pub width: f64,
    pub height: f64,
}

impl Page {
    /// Touches the middle of it, once it is there, open, and nothing lies over it.
    pub async fn tap(&mut self, target: Target) -> Told {
        let spot = self.spot(&target, true).await?;
        self.touch(spot.x, spot.y).await
    }

    /// A finger down and up at that point of the screen.
    pub async fn touch(&self, x: f64, y: f64) -> Told {
        let down =
            json!({ "type": "touchStart", "touchPoints": [{ "x": x, "y": y, "radiusX": 8, "radiusY": 8 }] });
        self.cdp("Input.dispatchTouchEvent", down).await?;
        self.cdp(
            "Input.dispatchTouchEvent",
            json!({ "type": "touchEnd", "touchPoints": [] }),
        )
        .await?;
        Ok(())
    }

    /// A palm down and up there: a contact wider than any fingertip.
    pub async fn palm(&self, x: f64, y: f64) -> Told {
        let points = json!([{ "x": x, "y": y, "radiusX": 60, "radiusY": 60 }]);
        let down = json!({ "type": "touchStart", "touchPoints": points });
        self.cdp("Input.dispatchTouchEvent", down).await?;
        let up = json!({ "type": "touchEnd", "touchPoints": [] });
        self.cdp("Input.dispatchTouchEvent", up).await.map(drop)
    }

    /// Touches keys one after the other by their names: `tap_keys(&["7", ".", "2", "ft·lb"])`.
    pub async fn tap_keys(&mut self, names: &[&str]) -> Told {
        for name in names {
            self.tap(super::button(*name)).await?;
        }
        Ok(())
    }

    /// Where it is and how large, brought on screen.
    pub async fn place_of(&self, target: Target) -> Told<Spot> {
        self.spot(&target, false).await
    }

    async fn spot(&self, target: &Target, open: bool) -> Told<Spot> {
        // The whole page first, and again once the key is not where it was: the page may be another by then.
        let mut rests = false;
        let spot = self
            .until(&target.to_string(), async || {
                let tree = match std::mem::take(&mut rests) {
                    true => Tree::of_role(&self.driver, target).await?,
                    false => Tree::read(&self.driver).await?,
                };
                rests = tree.find(target).is_some_and(|node| node.disabled);
                let Some(node) = tree.find(target) else {
                    return Ok(None);
                };
                if open && node.disabled {
                    return Err(Failure::new("it is shut"));
                }
                let found = self.ask_node(node.backend, WHERE).await?;
                if open && found["hit"] != Value::Bool(true) {
                    // Time was moved on: the step is seen from afar, and a touch wakes it.
                    self.script("document.querySelector('.far')?.click()", Value::Null)
                        .await?;
                    return Err(Failure::new(format!("over it lies {}", found["over"])));
                }
                let number = |name: &str| found[name].as_f64().unwrap_or_default();
                Ok(Some(Spot {
                    x: number("x"),
                    y: number("y"),
                    width: number("width"),
                    height: number("height"),
                }))
            })
            .await?;
        Ok(spot)
    }

    /// Calls a function on a node of the page; the function's `this` is the node.
    pub(super) async fn ask_node(&self, backend: i64, function: &str) -> Told<Value> {
        let node = self
            .cdp("DOM.resolveNode", json!({ "backendNodeId": backend }))
            .await?;
        let call = json!({
            "objectId": node["object"]["objectId"],
            "functionDeclaration": function,
            "returnByValue": true,
        });
        let answer = self.cdp("Runtime.callFunctionOn", call).await?;
        Ok(answer["result"]["value"].clone())
    }

    /// Touches a field and types into it, in place of what it held.
    pub async fn type_into(&mut self, target: Target, words: &str) -> Told {
        let backend = self.see(target.clone()).await?.backend;
        self.tap(target).await?;
        self.ask_node(backend, "function () { this.focus(); this.select?.(); }")
            .await?;
        if words.is_empty() {
            return self.press("Backspace").await;
        }
        self.cdp("Input.insertText", json!({ "text": words }))
            .await
            .map(drop)
    }

    /// Pastes into a field: one `paste` event with these words, then the words themselves unless refused.
    pub async fn paste_into(&mut self, target: Target, words: &str) -> Told {
        let backend = self.see(target).await?.backend;
        let quoted = Value::String(words.to_owned());
        let function = format!(
            "function () {{
                this.focus();
                const data = new DataTransfer();
                data.setData('text/plain', {quoted});
                const event = new ClipboardEvent('paste', {{ clipboardData: data, bubbles: true, cancelable: true }});
                if (this.dispatchEvent(event)) document.execCommand('insertText', false, {quoted});
            }}"
        );
        self.ask_node(backend, &function).await.map(drop)
    }

    /// Presses a key of a keyboard by its DOM name: "Enter", "Tab", "Escape", "Backspace", " ".
    pub async fn press(&self, key: &str) -> Told {
        let (code, number, text) = match key {
            "Enter" => ("Enter", 13, "\r"),
            "Tab" => ("Tab", 9, ""),
            "Escape" => ("Escape", 27, ""),
            "Backspace" => ("Backspace", 8, ""),
            " " => ("Space", 32, " "),
            "ArrowLeft" | "ArrowUp" | "ArrowRight" | "ArrowDown" => (
                key,
                37 + ["ArrowLeft", "ArrowUp", "ArrowRight", "ArrowDown"]
                    .iter()
                    .position(|name| *name == key)
                    .unwrap_or(0),
                "",
            ),
            other => (other, 0, other),
        };
        let event = |kind: &str| json!({ "type": kind, "key": key, "code": code, "text": text, "windowsVirtualKeyCode": number });
        self.cdp("Input.dispatchKeyEvent", event("keyDown")).await?;
        let up = json!({ "type": "keyUp", "key": key, "code": code, "windowsVirtualKeyCode": number });
        self.cdp("Input.dispatchKeyEvent", up).await.map(drop)
    }

    /// Hands files to the file field that fits the CSS selector, hidden or not.
    pub async fn give_files(&self, selector: &str, paths: &[&str]) -> Told {
        let root = self.cdp("DOM.getDocument", json!({})).await?;
        let of = json!({ "nodeId": root["root"]["nodeId"], "selector": selector });
        let field = self
            .until(&format!("a file field {selector}"), async || {
                let found = self.cdp("DOM.querySelector", of.clone()).await?;
                Ok(found["nodeId"].as_i64().filter(|id| *id != 0))
            })
            .await?;
        self.cdp(
            "DOM.setFileInputFiles",
            json!({ "nodeId": field, "files": paths }),
        )
        .await
        .map(drop)
    }
}
