//! Reading aloud, where the phone has a voice: nothing is fetched for it that the phone doesn't have.

use web_sys::{SpeechSynthesis, SpeechSynthesisUtterance};

fn voice() -> Option<SpeechSynthesis> {
    // Some browsers know the name and have no voice behind it.
    web_sys::window()?.speech_synthesis().ok()
}

/// Whether this browser can speak.
pub fn supported() -> bool {
    voice().is_some()
}

/// Says it, in the place of what is being said.
pub fn say(words: &str) {
    if let Some(voice) = voice()
        && let Ok(saying) = SpeechSynthesisUtterance::new_with_text(words)
    {
        saying.set_lang("en");
        voice.cancel();
        voice.speak(&saying);
    }
}
