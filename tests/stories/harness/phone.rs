//! The phone itself: how it is held, its look, its time zone, what it permits, how fast it is.

use serde_json::json;

use super::Told;
use super::browser::Screen;
use super::page::Page;

impl Page {
    /// Turns the phone.
    pub async fn turn(&self, screen: Screen) -> Told {
        self.cdp("Emulation.setDeviceMetricsOverride", screen.metrics())
            .await
            .map(drop)
    }

    /// The phone's dark or light look. Motion is always reduced, so nothing slides under the finger.
    pub async fn dark(&self, dark: bool) -> Told {
        let look = if dark { "dark" } else { "light" };
        let features = json!([
            { "name": "prefers-color-scheme", "value": look },
            { "name": "prefers-reduced-motion", "value": "reduce" },
        ]);
        self.cdp("Emulation.setEmulatedMedia", json!({ "features": features }))
            .await
            .map(drop)
    }

    /// Colours as the user forces them on every page, or the page's own.
    pub async fn forced_colours(&self, forced: bool) -> Told {
        let features = json!([
            { "name": "forced-colors", "value": if forced { "active" } else { "none" } },
            { "name": "prefers-reduced-motion", "value": "reduce" },
        ]);
        self.cdp("Emulation.setEmulatedMedia", json!({ "features": features }))
            .await
            .map(drop)
    }

    /// How far the cut-out and the home bar reach in: top, right, bottom, left, CSS px.
    pub async fn insets(&self, [top, right, bottom, left]: [u32; 4]) -> Told {
        let insets = json!({ "top": top, "right": right, "bottom": bottom, "left": left });
        self.cdp("Emulation.setSafeAreaInsetsOverride", json!({ "insets": insets }))
            .await
            .map(drop)
    }

    /// The page as a printer gets it, or as the screen does.
    pub async fn print_look(&self, printed: bool) -> Told {
        let media = if printed { "print" } else { "" };
        self.cdp("Emulation.setEmulatedMedia", json!({ "media": media }))
            .await
            .map(drop)
    }

    /// The phone's time zone, by its IANA name.
    pub async fn time_zone(&self, name: &str) -> Told {
        self.cdp("Emulation.setTimezoneOverride", json!({ "timezoneId": name }))
            .await
            .map(drop)
    }

    /// Grants or denies the page a permission by its web name: "notifications", "persistent-storage".
    pub async fn permit(&self, name: &str, granted: bool) -> Told {
        let setting = if granted { "granted" } else { "denied" };
        let what = json!({ "permission": { "name": name }, "setting": setting, "origin": self.url() });
        self.cdp("Browser.setPermission", what).await.map(drop)
    }

    /// The phone's processor is so many times slower than this computer's; 1 is as fast.
    pub async fn slow_down(&self, times: f64) -> Told {
        self.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": times }))
            .await
            .map(drop)
    }
}
